/** Faces of a part while its cut-outs are being taken out. */
import type { Face, Orientation } from './geometry.js';
import type { Wall } from './walls.js';

/** A face less what has been cut out of it. Areas [m2], volumes of steel and lining [m3]. */
export class OpenFace {
  private readonly fullOutside: number;
  private readonly fullInside: number;
  private readonly fullVolume: number;
  private readonly fullLining: number;
  /** of a head: how far the middle of its plate lies beyond the seam [m] */
  beyond = 0;
  private isLeaf = false;

  constructor(
    readonly name: string,
    readonly orientation: Orientation,
    readonly place: Face['place'],
    private outside: number,
    private inside: number,
    private volume: number,
    private readonly wall: Wall,
    private readonly length: number,
    private centre: number,
    private lining = 0,
    private readonly reach?: Face['reach'],
  ) {
    this.fullOutside = outside;
    this.fullInside = inside;
    this.fullVolume = volume;
    this.fullLining = lining;
  }

  /** What is left of it outside. */
  get left(): number {
    return this.outside;
  }

  /** A hole, straight through. */
  cut(area: number): void {
    this.outside -= area;
    this.inside -= area;
    this.volume -= area * this.wall.plate;
    this.lining -= area * (this.wall.lining?.thickness ?? 0);
  }

  /** Area given to a plate shared with another part; the inside loses the same share of itself. */
  give(area: number, middle: number): void {
    const left = this.outside - area;
    if (left > 1e-9 * this.fullOutside && Number.isFinite(middle)) {
      this.centre = (this.centre * this.outside - middle * area) / left;
    }
    this.inside -= (area * this.fullInside) / this.fullOutside;
    this.lining -= (area * this.fullLining) / this.fullOutside;
    this.volume -= area * this.wall.plate;
    this.outside = left;
  }

  /** A share of a head that is cut away where another part is joined: a flat plate stands in the seam instead. */
  giveShare(share: number, middle: number): void {
    if (share < 1 - 1e-9 && Number.isFinite(middle)) this.centre = (this.centre - middle * share) / (1 - share);
    this.outside -= share * this.fullOutside;
    this.inside -= share * this.fullInside;
    this.volume -= share * this.fullVolume;
    this.lining -= share * this.fullLining;
  }

  /**
   * A door: the hole's steel goes, the leaf and its lap come. Areas stay, as the leaf closes the hole, lined as the
   * face is.
   * @param share of the door that hangs in this face
   */
  hang(hole: { width: number; height: number }, leaf: { plate: number; lap: number }, share = 1): void {
    const leafArea = (hole.width + 2 * leaf.lap) * (hole.height + 2 * leaf.lap);
    this.volume += share * (leafArea * leaf.plate - hole.width * hole.height * this.wall.plate);
  }

  /** The leaf of a door as a face of its own, in the place of the hole; `share` of it was this face's. */
  leaf(
    name: string,
    door: { width: number; height: number; plate: number; lap: number },
    wall: Wall,
    reach: Face['reach'],
  ): OpenFace {
    const { width, height, plate, lap } = door;
    const hole = width * height;
    const of = (full: number) => (hole * full) / this.fullOutside;
    const made = new OpenFace(
      name,
      this.orientation,
      this.place,
      hole,
      of(this.fullInside),
      (width + 2 * lap) * (height + 2 * lap) * plate,
      wall,
      this.length,
      this.centre,
      of(this.fullLining),
      reach,
    );
    made.isLeaf = true;
    return made;
  }

  /** The finished face, or undefined when nothing of it is left outdoors. */
  close(density: number): Face | undefined {
    if (this.outside < 1e-6 * Math.max(1, this.fullOutside) || this.inside <= 0 || this.volume <= 0) return undefined;
    const mass = this.volume * density;
    return {
      name: this.name,
      wall: this.wall,
      orientation: this.orientation,
      place: this.place,
      outsideArea: this.outside,
      insideArea: this.inside,
      mass,
      lining: this.lining,
      thickness: this.volume / ((this.outside + this.inside) / 2),
      length: this.length,
      centre: this.centre,
      ...(this.beyond > 0 ? { beyond: this.beyond } : {}),
      ...(this.reach ? { reach: this.reach } : {}),
      ...(this.isLeaf ? { leaf: true } : {}),
    };
  }
}
