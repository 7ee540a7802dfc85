import type { RoseClass } from '../addin/core';

/** Names parted by commas. */
const names = (list: string): readonly string[] =>
  list.split(',').map((name) => name.trim().replace(/\s+/g, ' '));

/** Varieties of the sample garden. Every name is made up; none is meant to be a rose that is sold. */
export const VARIETIES: Readonly<Partial<Record<RoseClass, readonly string[]>>> = {
  'Hybrid tea': names(`
    Amber Kettle, Brass Gimlet, Chalk Ferry, Copper Trestle, Corduroy Moon, Drift Ladle, Ember Turnstile,
    Fallow Drum, Feldspar Waltz, Flint Parasol, Gantry Blush, Ginger Sextant, Granite Lullaby, Harbor Thimble,
    Hazel Semaphore, Indigo Mallet, Ivory Plumbline, Juniper Telegram, Kiln Serenade, Lacquer Tide,
    Larch Accordion, Lemon Viaduct, Linen Comet, Magenta Abacus, Marzipan Anvil, Mercury Bonnet, Millstone Pink,
    Nickel Oriole, Nutmeg Regatta, Oatfield Scarlet, Ochre Bassoon, Opal Wheelwright, Paper Observatory,
    Peach Dynamo, Pewter Carousel, Plum Theodolite, Porcelain Tugboat, Quarry Sundog, Quartz Mandolin,
    Raspberry Sundial, Russet Periscope, Saffron Weathercock, Salt Chandelier, Sienna Locomotive, Silver Bandsaw,
    Slate Minuet, Sorrel Gondola, Tallow Beacon, Tangerine Zither, Teak Overture, Tin Cathedral,
    Topaz Signalbox, Umber Parade, Velvet Drawbridge, Walnut Hydrant
  `),
  Grandiflora: names('Cinder Pavilion, Cobalt Hayride, Gable Trumpet'),
  Floribunda: names(`
    Apricot Tambourine, Barley Streamer, Button Estuary, Cranberry Trolley, Damson Picnic, Gooseberry Polka,
    Honey Escalator, Lilac Washboard, Pepper Roundabout, Toffee Flotilla
  `),
  Shrub: names('Bracken Lighthouse, Cider Windmill, Clover Aqueduct, Meadow Foghorn'),
  'Old garden rose': names('Abbey Gramophone, Candlewick Vellum, Grandmother’s Inkwell'),
  Polyantha: names('Clothesline Pink, Doily Ripple'),
  Climber: names('Ladder Nebula, Lattice Trombone, Rafter Pageant, Scaffold Blush, Spire Marmalade'),
  'Tree rose': names('Umber Parade'),
  Miniature: names(`
    Acorn Rivet, Beetle Sonnet, Bobbin Fizz, Crumb Galaxy, Custard Domino, Dimple Sprocket, Gnat Velvet,
    Jigsaw Blush, Kernel Disco, Ladybug Ledger, Lentil Flare, Minnow Pocket, Nib Carmine, Pebble Yodel,
    Pinhead Coral, Pixel Sorbet, Raisin Gusto, Sesame Twirl, Teaspoon Riot, Whistle Crumb
  `),
  Miniflora: names('Biscuit Gavotte, Cameo Flywheel, Locket Tangerine'),
};
