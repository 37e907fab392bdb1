/** The library: what another program may import. */
export type * from './design/design.js';
export type * from './design/geometry.js';
export type * from './study/result.js';
export { version } from './version.js';
