/** The page's own program. */
import { starterDesign } from '../design/starter.js';
import { part } from './dom.js';
import { carriesDesigns, designsIn, Keeper } from './kept.js';
import { Page } from './page.js';
import { pristine } from './savePage.js';
import { isKept, Workbench } from './workbench.js';

const shell = pristine();
const text = part('design').textContent ?? 'null';
const given: unknown = JSON.parse(text);
const bench = new Workbench(typeof given === 'string' || isKept(given) ? given : starterDesign());
const keeper = new Keeper(location.pathname, text);
// the addresses that the boot lines have unpacked the workers to
const { solver = '', pictures = '' } = document.documentElement.dataset;

void (async () => {
  const { hash } = location;
  const linked = carriesDesigns(hash);
  new Page(bench, {
    workers: {
      solver: { address: solver, name: 'solver', early: (window as { pitwrightSolver?: Worker }).pitwrightSolver },
      pictures: { address: pictures, name: 'pictures' },
    },
    shell,
    keeper,
  }).open(linked ? { found: await designsIn(hash) } : null);
})();
