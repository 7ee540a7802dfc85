import type { Litres, Metres } from '../measuring/quantity';
import { litres } from '../measuring/quantity';

const LITRES_PER_CUBIC_METRE = 1000;

/**
 * Liquid in a round barrel, straight or tapered.
 *
 * Definition: frustum of a cone, V = π h ÷ 12 × (D₁² + D₁ D₂ + D₂²); a cylinder where both widths are one. Belly,
 * ribs and the thickness of the floor are left out: count buckets into a barrel to know better.
 *
 * @param depth        of the liquid, m, ≥ 0
 * @param bottomWidth  inside diameter at the bottom, m, > 0
 * @param surfaceWidth inside diameter at the liquid's surface, m, > 0; the bottom's where left out
 * @example barrelVolume(metres(0.8509), metres(0.5715)) // 218.27… L
 */
export const barrelVolume = (
  depth: Metres,
  bottomWidth: Metres,
  surfaceWidth: Metres = bottomWidth,
): Litres =>
  litres(
    ((Math.PI * depth) / 12) *
      (bottomWidth ** 2 + bottomWidth * surfaceWidth + surfaceWidth ** 2) *
      LITRES_PER_CUBIC_METRE,
  );
