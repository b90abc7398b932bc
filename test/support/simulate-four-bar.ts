import { DistanceJoint, RevoluteJoint, Vec2, World } from "planck";

/** Four bars in a plane as they stand at the start; lengths in millimetres, angles anticlockwise from aft. */
export interface FourBar {
  readonly armMm: number;
  readonly hornMm: number;
  /** Shaft to hinge. */
  readonly aftMm: number;
  readonly upMm: number;
  readonly armAtDeg: number;
  readonly hornAtDeg: number;
}

/** Where arm and horn came to rest. */
export interface Pose {
  readonly armAtDeg: number;
  readonly hornAtDeg: number;
}

/** Library units a millimetre: large, so that the slop at which the library stops correcting is 5 nanometres of the model. */
const SCALE = 1000;
/** Largest turn of the arm in one step of the simulation. */
const STEP_DEG = 0.25;
const STEP_SECONDS = 1 / 60;
const [VELOCITY_ITERATIONS, POSITION_ITERATIONS] = [20, 200];
/** The horn has settled when a step with the arm at rest turns it by less. */
const STILL_RAD = 1e-12;
const MOST_SETTLING_STEPS = 100;

/**
 * Turns the arm to so many degrees, anticlockwise, from where it stands at the start, one place after the other, and lets
 * the horn follow: two bodies on pins and a rigid rod between them. The solver knows no closed form and no branches: each
 * step it looks for the impulses that keep pins and rod together, then pushes back what is left. The rod gets its
 * length from the start. Throws where the horn does not settle, as next to a dead centre.
 */
export function simulateFourBar(bars: FourBar, turnsDeg: readonly number[]): readonly Pose[] {
  const world = new World({ gravity: Vec2(0, 0), allowSleep: false });
  const hinge = Vec2(SCALE * bars.aftMm, SCALE * bars.upMm);
  const arm = world.createKinematicBody({ angle: radians(bars.armAtDeg) });
  const horn = world.createDynamicBody({ position: hinge, angle: radians(bars.hornAtDeg) });
  // At rest mass and inertia matter to nothing but the solver: heavy for its inertia, the horn is turned by the rod
  // and not pushed off its hinge, so that pin and rod come to agree quickly.
  const hornRadius = SCALE * bars.hornMm;
  horn.setMassData({ mass: 1, center: Vec2(0, 0), I: (hornRadius / 100) ** 2 });
  const [armPin, hornPin] = [Vec2(SCALE * bars.armMm, 0), Vec2(hornRadius, 0)];
  world.createJoint(new RevoluteJoint({}, world.createBody(), horn, hinge));
  world.createJoint(
    new DistanceJoint({ frequencyHz: 0 }, arm, horn, arm.getWorldPoint(armPin), horn.getWorldPoint(hornPin)),
  );

  const step = () => world.step(STEP_SECONDS, VELOCITY_ITERATIONS, POSITION_ITERATIONS);
  const turnArm = (turnRad: number) => {
    const count = Math.ceil(Math.abs(turnRad) / radians(STEP_DEG));
    arm.setAngularVelocity(count === 0 ? 0 : turnRad / count / STEP_SECONDS);
    for (let done = 0; done < count; done += 1) step();
    arm.setAngularVelocity(0);
    for (let done = 0; done < MOST_SETTLING_STEPS; done += 1) {
      const before = horn.getAngle();
      step();
      if (Math.abs(horn.getAngle() - before) < STILL_RAD) return;
    }
    throw new Error(`the horn does not settle ${degrees(turnRad)} degrees on`);
  };

  return turnsDeg.map((turnDeg) => {
    turnArm(radians(bars.armAtDeg + turnDeg) - arm.getAngle());
    return { armAtDeg: degrees(arm.getAngle()), hornAtDeg: degrees(horn.getAngle()) };
  });
}

const radians = (angleDeg: number) => (angleDeg * Math.PI) / 180;
const degrees = (angleRad: number) => (angleRad * 180) / Math.PI;
