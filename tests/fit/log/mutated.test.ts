import { readSpoiled } from './spoiledLogs.js';

readSpoiled(36);
