import type { PlantSize } from '../sizeClass';
import { phrases } from './phrases';

/** Growers' words for a plant's size, as `wordsOf` leaves them. */
export const SIZE_WORDS: Readonly<Record<PlantSize, readonly string[]>> = {
  large: phrases(`
    large, lrg, lg, lge, big, xl, xlarge, x large, extra large, very large, huge, tall, full size,
    full sized, fullsize, gross, grosse, sehr gross, grand, grande, grandes, grands, groot, grote,
    grandi, alto, hoch, vigorous
  `),
  medium: phrases(`
    medium, med, md, mid, middling, average, normal, regular, mittel, mittelgross, moyen, moyenne,
    mediano, mediana, middel, gemiddeld, middelgroot, medio, media, bush
  `),
  small: phrases(`
    small, sm, sml, little, short, low, compact, klein, kleine, petit, petite, petits, pequeno,
    pequena, pequenos, piccolo, piccola, young, new
  `),
  miniature: phrases(`
    mini, minis, min, miniature, tiny, xs, very small, zwerg, nain, naine, enano, enana, dwerg,
    nano, nana, miniatura, dwarf
  `),
};

/** Single letters are sizes in a size column only: an M in a class column is a miniature. */
export const SIZE_LETTERS: Readonly<Record<string, PlantSize>> = {
  l: 'large',
  b: 'large',
  g: 'large',
  m: 'medium',
  s: 'small',
  k: 'small',
  p: 'small',
};
