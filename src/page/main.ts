/** The page's own program. */
import { starterDesign } from '../design/starter.js';
import { part } from './dom.js';
import { Page } from './page.js';
import { Workbench } from './workbench.js';

const given: unknown = JSON.parse(part('design').textContent ?? 'null');
const bench = new Workbench(typeof given === 'string' ? given : starterDesign());
// the addresses that the boot lines have unpacked the workers to
const { solver = '', pictures = '' } = document.documentElement.dataset;
new Page(bench, { solver, pictures }).open();
