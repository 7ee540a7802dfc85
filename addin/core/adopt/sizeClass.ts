export const SIZE_CLASSES = [
  'Large bush',
  'Bush',
  'Small bush',
  'Miniature',
  'Potted bush',
  'Potted miniature',
  'Climber',
  'Tree rose',
] as const;
/** What decides the dose: how big the plant is, and whether it lives in a pot. */
export type SizeClass = (typeof SIZE_CLASSES)[number];

export const PLANT_SIZES = ['large', 'medium', 'small', 'miniature'] as const;
export type PlantSize = (typeof PLANT_SIZES)[number];

/**
 * Classes that growers' lists tell apart, and how big such a plant usually is. Common practice: bush roses of
 * the show classes are fed as large bushes, cluster-flowered ones a little less, miniatures least.
 */
export const ROSE_CLASSES = {
  'Hybrid tea': 'Large bush',
  Grandiflora: 'Large bush',
  Floribunda: 'Bush',
  Polyantha: 'Small bush',
  Miniflora: 'Miniature',
  Miniature: 'Miniature',
  Patio: 'Small bush',
  Groundcover: 'Small bush',
  Shrub: 'Large bush',
  'Old garden rose': 'Large bush',
  Species: 'Large bush',
  Climber: 'Climber',
  Rambler: 'Climber',
  'Tree rose': 'Tree rose',
} as const satisfies Record<string, SizeClass>;
export type RoseClass = keyof typeof ROSE_CLASSES;

const BY_SIZE: Readonly<Record<PlantSize, SizeClass>> = {
  large: 'Large bush',
  medium: 'Bush',
  small: 'Small bush',
  miniature: 'Miniature',
};

/** What a row says about one plant; left out where it does not say. */
export interface RoseReading {
  readonly roseClass?: RoseClass;
  readonly size?: PlantSize;
  readonly pot?: boolean;
}

/**
 * The size class for dosing. A stated size counts before the class, except that climbers and tree roses stay
 * what they are and a miniature stays one however big it grew; no word about a pot means the ground.
 *
 * @returns undefined where neither class nor size is known: it is asked, not guessed
 * Source: how growers write their lists; common practice, nothing published.
 * @example sizeClassFor({ roseClass: 'Miniature', pot: true }) // 'Potted miniature'
 */
export const sizeClassFor = ({ roseClass, size, pot }: RoseReading): SizeClass | undefined => {
  const usual: SizeClass | undefined = roseClass && ROSE_CLASSES[roseClass];
  if (usual === 'Climber' || usual === 'Tree rose') return usual;
  const grown = size && usual !== 'Miniature' ? BY_SIZE[size] : usual;
  if (!grown || !pot) return grown;
  return grown === 'Miniature' ? 'Potted miniature' : 'Potted bush';
};
