/**
 * A bed that over- and undershoots its air goes this share of the way there as of the last, at least, or so many times
 * it where it does not.
 */
const FOLLOW = { back: 0.5, least: 0.02, on: 1.5 };

/**
 * A number that is only known to follow itself, a step later: the air that a bed lets in by what it burned in the last.
 * Where it falls to and fro about what it would settle at it goes a share of the way there, else all of it.
 */
export class Follower {
  private share = 1;
  private last = 0;

  next(now: number, to: number): number {
    const move = to - now;
    this.share =
      move * this.last < 0 ? Math.max(FOLLOW.least, FOLLOW.back * this.share) : Math.min(1, FOLLOW.on * this.share);
    this.last = move;
    return now + this.share * move;
  }
}
