/** A tall picture cut into strips that stand side by side, so that a person sees all of it at a readable size. */
import { writeFileSync } from 'node:fs';
import { createCanvas, loadImage } from '@napi-rs/canvas';

const STRIP = { height: 1300, most: 4, gap: 10 };

/**
 * @param {Buffer} png
 * @param {string} path where pictures go, without their ending
 * @returns {Promise<string[]>} their paths
 */
export async function inStrips(png, path) {
  const { height, most, gap } = STRIP;
  const tall = await loadImage(png);
  const strips = Math.ceil(tall.height / height);
  const paths = [];
  for (let first = 0; first < strips; first += most) {
    const count = Math.min(most, strips - first);
    const sheet = createCanvas(count * (tall.width + gap), height);
    const context = sheet.getContext('2d');
    context.fillStyle = '#888';
    context.fillRect(0, 0, sheet.width, sheet.height);
    for (let i = 0; i < count; i++) {
      const from = (first + i) * height;
      const own = Math.min(height, tall.height - from);
      context.drawImage(tall, 0, from, tall.width, own, i * (tall.width + gap), 0, tall.width, own);
    }
    paths.push(`${path}-${first / most + 1}.png`);
    writeFileSync(paths.at(-1), sheet.toBuffer('image/png'));
  }
  return paths;
}
