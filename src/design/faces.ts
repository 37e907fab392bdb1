/** Faces of a part while its cut-outs are being taken out. */
import type { Face, Orientation } from './geometry.js';

/** A face less what has been cut out of it. Areas [m2], volume of steel [m3]. */
export class OpenFace {
  private readonly fullOutside: number;
  private readonly fullInside: number;
  private readonly fullVolume: number;
  /** of a head: how far the middle of its plate lies beyond the seam [m] */
  beyond = 0;

  constructor(
    readonly name: string,
    readonly orientation: Orientation,
    readonly place: Face['place'],
    private outside: number,
    private inside: number,
    private volume: number,
    private readonly plate: number,
    private readonly length: number,
    private centre: number,
  ) {
    this.fullOutside = outside;
    this.fullInside = inside;
    this.fullVolume = volume;
  }

  /** A hole, straight through. */
  cut(area: number): void {
    this.outside -= area;
    this.inside -= area;
    this.volume -= area * this.plate;
  }

  /** Area given to a plate shared with another part; the inside loses the same share of itself. */
  give(area: number, middle: number): void {
    const left = this.outside - area;
    if (left > 1e-9 * this.fullOutside && Number.isFinite(middle)) {
      this.centre = (this.centre * this.outside - middle * area) / left;
    }
    this.inside -= (area * this.fullInside) / this.fullOutside;
    this.volume -= area * this.plate;
    this.outside = left;
  }

  /** A share of a head that is cut away where another part is joined: a flat plate stands in the seam instead. */
  giveShare(share: number, middle: number): void {
    if (share < 1 - 1e-9 && Number.isFinite(middle)) this.centre = (this.centre - middle * share) / (1 - share);
    this.outside -= share * this.fullOutside;
    this.inside -= share * this.fullInside;
    this.volume -= share * this.fullVolume;
  }

  /** A door: the hole's steel goes, the leaf and its lap come. Areas stay, as the leaf closes the hole. */
  hang(hole: { width: number; height: number }, leaf: { plate: number; lap: number }): void {
    const leafArea = (hole.width + 2 * leaf.lap) * (hole.height + 2 * leaf.lap);
    this.volume += leafArea * leaf.plate - hole.width * hole.height * this.plate;
  }

  /** The finished face, or undefined when nothing of it is left outdoors. */
  close(density: number): Face | undefined {
    if (this.outside < 1e-6 * Math.max(1, this.fullOutside) || this.inside <= 0 || this.volume <= 0) return undefined;
    const mass = this.volume * density;
    return {
      name: this.name,
      orientation: this.orientation,
      place: this.place,
      outsideArea: this.outside,
      insideArea: this.inside,
      mass,
      thickness: this.volume / ((this.outside + this.inside) / 2),
      length: this.length,
      centre: this.centre,
      ...(this.beyond > 0 ? { beyond: this.beyond } : {}),
    };
  }
}
