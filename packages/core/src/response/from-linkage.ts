import type { Drive } from "../linkage/drive.ts";
import type { DegPerUs, Us } from "../units/quantity.ts";
import { driveResponse, type LinkageResponse } from "./drive-response.ts";

/** How a servo is set to its linkage. */
export interface ServoSetting {
  /** Pulse at which the linkage stands as declared. */
  readonly level: Us;
  /** Rotation per microsecond, positive where the shaft turns clockwise as the pulse rises. */
  readonly rotation: DegPerUs;
  /** The stops: lowest and highest pulse. */
  readonly pulses: readonly [Us, Us];
}

/**
 * The response of one servo from its linkage alone: rotation = `rotation` (pulse - `level`), between the stops and inside
 * the drive's monotone range; it ends `DEAD_CENTRE_MARGIN_DEG` short of a dead centre. Undefined where nothing is left, as
 * for a servo that does not turn. `cut` says where the stops lie beyond what the linkage can do.
 */
export function responseFromLinkage(drive: Drive, setting: ServoSetting): LinkageResponse | undefined {
  if (setting.rotation === 0) return undefined;
  const line = {
    levelUs: setting.level,
    degPerUs: setting.rotation,
    rotationZeroDeg: 0,
    deflectionZeroDeg: 0,
  };
  return driveResponse(drive, line, setting.pulses);
}
