/** What `--watch` needs of the computer: word of changed files, and a page that a browser on this computer can open. */
export interface Live {
  /** Calls `changed` after any file under the folder has changed. */
  readonly watchFolder: (folder: string, changed: () => void) => void;
  /** Serves pages on the loopback address only, at a free port. */
  readonly serve: (page: () => string) => Promise<LivePage>;
  /** Settles when the person at the keyboard ends it. */
  readonly ended: () => Promise<void>;
}

export interface LivePage {
  readonly url: string;
  /** Tells every open page that there is a new one. */
  readonly announce: () => void;
  readonly close: () => void;
}
