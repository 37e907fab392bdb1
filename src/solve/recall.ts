/** A step of a cycle: when it began after the cycle did, its length, and how far its stages lay from their guesses. */
interface Taken {
  after: number;
  h: number;
  surprises: Float64Array[];
}

/** Steps are alike where they begin and end within this share of their length. */
const ALIKE = 0.05;

/**
 * What the steps of one cycle tell those of the next: where the same happens again and again, the stages of a step lie
 * as far from where its past makes them lie as those of its like a cycle before. Guides first guesses alone.
 */
export class Recall {
  private last: Taken[] = [];
  private now: Taken[] = [];
  private began = -Infinity;

  /** A cycle begins at a time. */
  begin(time: number): void {
    [this.last, this.now] = [this.now, []];
    this.began = time;
  }

  /** How far the stages of a step like this one lay from their guesses, a cycle before; undefined: there was none. */
  like(time: number, h: number, size: number): readonly Float64Array[] | undefined {
    const after = time - this.began;
    const near = (a: number, b: number) => Math.abs(a - b) <= ALIKE * h;
    const taken = this.last.find((each) => near(each.after, after) && near(each.h, h));
    return taken?.surprises[0].length === size ? taken.surprises : undefined;
  }

  /** Note a step that was taken. */
  note(time: number, h: number, surprises: readonly Float64Array[]): void {
    if (this.began === -Infinity) return;
    this.now.push({ after: time - this.began, h, surprises: surprises.map((each) => each.slice()) });
  }
}
