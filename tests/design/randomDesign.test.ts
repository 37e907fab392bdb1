import { askRandomDesigns } from './randomDesigns.js';

askRandomDesigns(150);
