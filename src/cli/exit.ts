/** What a run ends with, for scripts: each has its number, and each message its one clear sentence. */
export const exit = { done: 0, ourFault: 1, wrongUsage: 2, wrongInput: 3, notPhysical: 4 } as const;

type ExitCode = (typeof exit)[keyof typeof exit];

/** A stop that the person at the keyboard can mend; its message is shown as it is, without a stack. */
export class Stop extends Error {
  override name = 'Stop';

  constructor(
    readonly code: ExitCode,
    message: string,
  ) {
    super(message);
  }
}
