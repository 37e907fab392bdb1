import { askShopDesigns } from './shopDesigns.js';

askShopDesigns(80);
