import type { RoseClass } from '../sizeClass';
import { phrases } from './phrases';

/**
 * Growers' words for the classes, as `wordsOf` leaves them. The abbreviations are those in use among rose
 * societies and growers (common practice); German, French, Spanish, Dutch and Italian words are those of
 * ordinary catalogues. Plurals with -s, -n, -en are found without being listed.
 */
export const ROSE_CLASS_WORDS: Readonly<Record<RoseClass, readonly string[]>> = {
  'Hybrid tea': phrases(`
    ht, h t, hyb t, hyb tea, hybrid t, hybrid tea, hybridtea, hybrid tea rose, large flowered,
    largeflowered, edelrose, teehybride, tee hybride, teahybride, hybride de the, hybride the,
    grandes fleurs, a grandes fleurs, buisson a grandes fleurs, hibrido de te, hibrida de te,
    theehybride, thee hybride, grootbloemig, grootbloemige, ibrido di te, ibrida di te, ibrido di
    tea, ibridi di te, hibridos de te, hybrides de the
  `),
  Grandiflora: phrases('gr, gra, grand, grandi, grandiflora, grandifloras'),
  Floribunda: phrases(`
    f, fl, flo, flor, flori, florib, floribunda, cluster flowered, clusterflowered, beetrose, fleurs
    groupees, a fleurs groupees, buisson a fleurs groupees, trosroos, trosrozen, flor agrupada,
    fiori a mazzi
  `),
  Polyantha: phrases('pol, poly, polyantha, polyanthe, poliantha, polyantharose, poliantea'),
  Miniflora: phrases(`
    minfl, mnfl, mf, mfl, minifl, minflora, miniflora, mini flora, mini fl, min fl, minifloribunda
  `),
  Miniature: phrases(`
    m, min, mini, minis, miniature, minature, miniture, micro, micromini, micro mini, zwergrose,
    zwerg, miniaturrose, minirose, rosier miniature, rosier nain, miniatura, miniroos, dwergroos,
    dwergrozen, minirozen, nana, nano, rosa nana, dwarf
  `),
  Patio: phrases('patio, patiorose, patioroos, pat'),
  Groundcover: phrases(`
    gc, groundcover, ground cover, carpet, landscape, bodendecker, bodendeckerrose, couvre sol,
    couvresol, tapizante, bodembedekker, tappezzante, coprisuolo, flachenrose, kleinstrauchrose
  `),
  Shrub: phrases(`
    s, sh, shr, shrub, modern shrub, english, english shrub, english style, hybrid musk, hmsk, hm,
    rugosa, hybrid rugosa, hrg, kordesii, hkor, strauchrose, strauch, arbustif, arbuste, arbusto,
    arbustivo, arbustiva, heesterroos, struikroos, heester, heesterrozen, struikrozen, cespuglio,
    rugosarose
  `),
  'Old garden rose': phrases(`
    ogr, old garden, old, antique, heritage, heirloom, historic, alba, bourbon, centifolia, cabbage,
    china, damask, gallica, hybrid perpetual, hp, hyb perpetual, moss, noisette, portland, tea,
    hybrid china, alte rose, historische rose, historische, ancien, ancienne, rosier ancien, rose
    ancienne, antiguo, antigua, rosa antigua, oude roos, oude rozen, antica, antico, rosa antica,
    rose antiche, alte rosen, bourbonrose, moosrose, damaszenerrose
  `),
  Species: phrases(`
    sp, species, wild, wildrose, wildroos, botanical, botanique, botanica, botanische, silvestre,
    selvatica
  `),
  Climber: phrases(`
    c, cl, clg, clb, lcl, l cl, lc, climber, climbing, large flowered climber, large flowered cl,
    hcl, pillar, kletterrose, kletter, grimpant, grimpante, rosier grimpant, trepador, trepadora,
    rosal trepador, klimroos, klimrozen, klimmer, rampicante, rampicanti, trepadores
  `),
  Rambler: phrases(`
    r, ram, ramb, rambler, rambling, ramblerrose, liane, rosier liane, sarmentosa, sarmentoso,
    hwich, hmult
  `),
  'Tree rose': phrases(`
    tree, std, standard, half standard, patio tree, patio standard, weeping, weeping standard,
    stammrose, stamm, hochstamm, hochstammrose, halbstamm, tige, rosier tige, pie alto, stamroos,
    stamrozen, alberello, ad alberello
  `),
};

/** Words beside a class that say nothing more: 'climbing rose', 'shrub type'. */
export const IDLE_WORDS: readonly string[] = phrases(`
    rose, roses, rosen, rosier, rosiers, rosa, rosas, rosal, rosales, roos, rozen, rosaio, rosai,
    plant, plants, type, bush, bushes, class, no, nr, size, in, a, an, the, of, or, and, im, en, dans, modern
  `);
