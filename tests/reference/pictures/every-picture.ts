import { casePictures } from './case-pictures.ts';
import type { Picture } from './picture.ts';
import { pictureSvg } from './picture-svg.ts';
import { sitePictures } from './site-pictures.ts';
import { workPictures } from './work-pictures.ts';

/** One picture for every page of docs/methods. */
export const pictures: readonly Picture[] = [...casePictures, ...sitePictures, ...workPictures];

export function drawn({ alt, tinted, draw }: Picture): string {
  return pictureSvg(draw(), alt, tinted);
}

/** How a page shows its picture. */
export function embedding({ id, alt }: Picture): string {
  return `![${alt}](pictures/${id}.svg)`;
}
