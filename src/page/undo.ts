import { part } from './dom.js';
import { announce } from './notices.js';
import type { Workbench } from './workbench.js';

/** One step back or forth, by button and by key. */
export class Undo {
  /** @param renew shows the options as they are after a step */
  constructor(
    private readonly bench: Workbench,
    private readonly renew: () => void,
  ) {
    part('undo').addEventListener('click', () => this.travel('undo'));
    part('redo').addEventListener('click', () => this.travel('redo'));
    document.addEventListener('keydown', (event) => this.key(event));
  }

  /** What can be taken back. */
  show(): void {
    part<HTMLButtonElement>('undo').disabled = !this.bench.canUndo;
    part<HTMLButtonElement>('redo').disabled = !this.bench.canRedo;
  }

  private travel(way: 'undo' | 'redo'): void {
    if (!this.bench[way]()) return;
    this.renew();
    announce(way === 'undo' ? 'One change taken back.' : 'One change made again.');
  }

  /** Ctrl-Z and its kin; where someone has begun to type, the browser's own. */
  private key(event: KeyboardEvent): void {
    const { target } = event;
    const key = event.key.toLowerCase();
    if (!(event.ctrlKey || event.metaKey) || event.altKey || (key !== 'z' && key !== 'y')) return;
    if (target instanceof HTMLInputElement && target.type === 'text' && this.isTyping(target)) return;
    event.preventDefault();
    this.travel(key === 'y' || event.shiftKey ? 'redo' : 'undo');
  }

  private isTyping({ dataset, value }: HTMLInputElement): boolean {
    const { refused } = this.bench.current;
    return dataset.field !== undefined && refused.get(dataset.field)?.value === value;
  }
}
