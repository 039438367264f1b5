import { say } from '../words/say.ts';

/** How a reference is known to us. `read`: the figure stood on the page named. */
/** How we know what a source says. */
export type Provenance = 'read' | 'read second-hand' | 'from memory';

export interface Reference {
  /** Who, when, what, where: enough to find it. */
  readonly text: string;
  /** What it is cited for, in our own words, with its figures. */
  readonly says: string;
  readonly provenance: Provenance;
  readonly address?: string;
}

/** What is cited, by key. Facts and figures only; a rule of the trade without a study is marked so where it is used. */
export const bibliography: Readonly<Record<string, Reference>> = {
  'turner-balance': {
    text: 'Turner, Objective Assessment Hoof Balance (web reprint of his definitions)',
    says: 'The axis is broken back where the hoof angle is below the pastern angle and broken forward where it is above, no tolerance printed; heels are underrun where the heel angle is 5 degrees less than the toe angle; contracted where the frog is less than 67 percent as wide as it is long.',
    provenance: 'read',
    address: 'http://www.equipodiatry.com/hoofbal.htm',
  },
  'ogrady-sheared': {
    text: "O'Grady, Shoeing Management of Sheared Heels; O'Grady 2011, WEVA India, citing Turner 1992",
    says: 'Heels are sheared where inside and outside heel lengths, hairline to ground or shoe, are 0.5 cm or more apart.',
    provenance: 'read',
    address: 'https://www.equipodiatry.com/news/63',
  },
  'ogrady-mediolateral': {
    text: "O'Grady, equipodiatry.com, article 7",
    says: 'In the ideal foot a line that joins two like points of the hairline is parallel to the ground; the inside wall is often steeper and may then be shorter.',
    provenance: 'read',
    address: 'https://www.equipodiatry.com/news/7',
  },
  'baus-mediolateral': {
    text: 'M. Baus, Ask the Vet, outsiderein.com',
    says: "One clinician's rule, on radiographs: within 3 mm from side to side is not troubling; more than 5 mm changes the shoeing.",
    provenance: 'read',
    address: 'https://outsiderein.com/ask-the-vet-pumped-up-kicks-part-two',
  },
  'lesniak-2017': {
    text: 'Lesniak, Williams, Kuznik & Douglas 2017, Animals 7(4):29, doi:10.3390/ani7040029 (abstract)',
    says: 'In front photographs of 26 horses before and after the farrier, inside and outside wall heights were greater afterwards although horn had been removed: a projected height rises as the wall stands up.',
    provenance: 'read',
    address: 'https://www.mdpi.com/2076-2615/7/4/29',
  },
  'adams-stashak': {
    text: "Adams & Stashak's Lameness in Horses, 7th ed., pp. 89 and 1092",
    says: 'In a straight axis the dorsal wall is parallel to the dorsal pastern; the heel angle should come near the toe angle but is generally lower; toe to heel length 2:1 in front and 2:1.5 behind; the angle itself matters less than the axis.',
    provenance: 'read',
    address: 'https://online.flipbuilder.com/ulbm/dvnb/files/basic-html/page1126.html',
  },
  'stachurska-2008': {
    text: 'Stachurska et al. 2008, Arch. Anim. Breed. 51(6):531',
    says: 'In 77 mares of four breeds, after trimming, the toe was about twice as long as the heel in front and hind feet alike; front feet were clearly wider, hind feet relatively wider at the heel buttress.',
    provenance: 'read',
    address: 'https://aab.copernicus.org/articles/51/531/2008/',
  },
  'dyson-2011': {
    text: 'Dyson 2011, as quoted by a farrier author',
    says: 'Toe height to heel height should not pass 3:1.',
    provenance: 'read second-hand',
    address: 'https://www.theequinedocumentalist.com/post/the-truth-on-dorso-palmer-plantar-balance',
  },
  'turner-1992': {
    text: 'Turner 1992, Proc. Am. Assoc. Equine Pract. 38:389-395, and later reprints',
    says: 'Guideline toe length 7.6 cm at 360 to 400 kg, 8.25 cm at 425 to 475 kg, 8.9 cm at 525 to 575 kg; nothing between the bands or outside them. Ground area of a foot from the circumference C of the hairline: C²/4π; whole body weight over the area of one foot.',
    provenance: 'from memory',
  },
  'canto-2004': {
    text: 'Canto 2004, MSc thesis, Univ. Federal de Santa Maria (97 Crioulo horses in training; abstract)',
    says: 'Toe 8.7 cm at a mean weight of 411.4 kg is called too long; toe angle 52.7 degrees, 45 to 58; contracted heels 85 of 97, imbalance from side to side 48, mismatched toe angles 23, broken-back axis 11.',
    provenance: 'read',
    address: 'http://200.130.0.112/bdtd/Record/UFSM_f372e40c19b122974014bbde73c474cb',
  },
  'dau-2015': {
    text: 'Dau et al. 2015, Rev. Bras. Med. Vet. 37:366 (58 Crioulo roping horses, front feet; abstract)',
    says: 'Long toes 52 of 58, underrun heels 28, unequal toe angles 16, imbalance from side to side 9 (counts worked back from the printed percentages); toe 9.21 cm (SD 0.93), toe angle 51.8 degrees (SD 3.5).',
    provenance: 'read',
    address: 'https://bjvm.org.br/BJVM/article/view/421',
  },
  'schade-2013': {
    text: 'Schade et al. 2013, Cienc. Rural 43(3):456-461, doi:10.1590/S0103-84782013000300013 (44 cart horses; abstract)',
    says: 'Unequal toe angles 18 of 44 in front and 15 of 44 behind; contracted frog 31 of 44 right hind and 29 of 44 left hind (counts worked back from the printed percentages); toe angle 49.1 degrees (SD 5.1) in front, 51.8 (SD 4.3) behind.',
    provenance: 'read',
    address: 'http://doczz.com.br/doc/672445/',
  },
  vaquejada: {
    text: 'Biometria e alterações do equilíbrio podal em equinos utilizados em vaquejada (50 Quarter Horses; abstract; authors and year not shown)',
    says: 'Contracted heels 32 of 50, imbalance from side to side 15, asymmetric feet 27.',
    provenance: 'read',
    address:
      'https://discovery.researcher.life/article/biometria-e-alteraes-do-equilbrio-podal-em-equinos-utilizados-em-vaquejada/8ae0de24c31d39de84de56b4e53a7733',
  },
  'sport-horse-survey': {
    text: 'Survey of 120 sport horses, Rev. Bras. Saúde Prod. Anim., article 41203 (abstract)',
    says: 'Broken axis in 97 percent of right fore feet (116 of 120, worked back), contracted heels in 95 percent (114).',
    provenance: 'read',
    address: 'https://periodicos.ufba.br/index.php/rbspa/',
  },
  'hobbs-2018': {
    text: 'Hobbs et al. 2018, as quoted by a farrier author',
    says: 'A front pair is uneven where the dorsal wall angles differ by more than 1.5 degrees.',
    provenance: 'read second-hand',
    address:
      'https://www.theequinedocumentalist.com/post/high-low-hoof-conformation-farriery-and-whole-horse-relevance',
  },
  'kummer-2006': {
    text: 'Kummer et al. 2006, Vet. J., doi:10.1016/j.tvjl.2005.03.008 (40 Warmbloods, radiographs)',
    says: 'The left front hoof capsule was the larger in 70 percent of horses.',
    provenance: 'read',
    address: 'https://www.equipodiatry.com/news/53',
  },
  'ponies-2015': {
    text: 'Radiographic measurements of the hooves of normal ponies, 2015, Vet. J. 206(3):332-337, doi:10.1016/j.tvjl.2015.10.005',
    says: 'Of 81 ponies the left foot was the longer in 72 percent in front and 67 percent behind; front feet tended to be more upright than hind.',
    provenance: 'read',
    address:
      'https://bib.vetmed.fu-berlin.de/pubdb/pub/20341-radiographic-measurements-of-the-hooves-of-normal-ponies/',
  },
  'no-matching-pair': {
    text: 'Study of the front feet of 40 horses, studylib.net/doc/7760711 (own title not shown)',
    says: 'No horse had a perfectly matching pair.',
    provenance: 'read',
    address: 'https://studylib.net/doc/7760711',
  },
  'palmar-trim-trial': {
    text: 'Strategic palmar trimming trial (11 horses with underrun heels, every 5 weeks to 30; abstract)',
    says: 'Shape changed only at 25 to 30 weeks.',
    provenance: 'read',
    address:
      'http://globalauthorid.com/WebPortal/ArticleView?wd=33D590FFF1ACAEBAC17B4C852255E57AC1EB1DCB841105D9A1254F775C40CA2B',
  },
  'afj-load': {
    text: 'American Farriers Journal, article 14979',
    says: 'Body weight over the ground area of a foot: 60 to 78 psi is normal (4.22 to 5.48 kg/cm²), above 78 psi the feet are small for the horse.',
    provenance: 'read',
    address:
      'https://www.americanfarriers.com/articles/14979-optimum-distal-limb-mechanics-are-just-a-few-measurements-away',
  },
  'anatomy-share': {
    text: 'Veterinary anatomy textbook, chapter on the horse forelimb (title not shown)',
    says: 'The front feet carry 55 to 60 percent of the body weight at rest; raising the head moves the load back.',
    provenance: 'read',
    address:
      'https://medic.studio/veterinary-anatomy-physiology/the-western-world-horses-are-now-mainly-bred-110856.html',
  },
  'carroll-1988': {
    text: 'Carroll & Huntington 1988, Equine Vet. J. 20(1):41-45, doi:10.1111/j.2042-3306.1988.tb01451.x',
    says: 'Weight in kg is girth² times length in cm over a divisor that averaged 11 900 in 281 horses (r² 0.90).',
    provenance: 'read',
    address: 'https://www.deepdyve.com/lp/doc/maMbhSh0Kr',
  },
  'russell-extension': {
    text: "Russell, equine extension, Estimating a Horse's Body Weight",
    says: 'Weight in pounds is girth² times length in inches over 330.',
    provenance: 'read',
    address: 'https://paperzz.com/doc/9305901/estimating-a-horse-s-body-weight',
  },
  'hucul-weight': {
    text: 'Luszczynski, Michalak & Pieszka, body weight of adult Hucul horses (n = 159)',
    says: 'The formula of Carroll & Huntington was off by 4.5 percent on average and 7 kg too low.',
    provenance: 'read',
    address: 'https://repo.ur.krakow.pl/info/article/URacafd9977d7e4a2b8e28d3b421523c02/',
  },
  'decurnex-2009': {
    text: 'Decurnex, Anderson & Davies 2009, Equine Vet. J. 41(3) (volume and issue from memory; abstract)',
    says: 'Repeatability coefficient of the hairline circumference by tape 1.8 mm (25 horses, three repeats); a within-foot SD of 0.65 mm if that is 1.96·√2·SD.',
    provenance: 'read',
    address:
      'https://orthovetsupersite.com/abstract/influence-different-exercise-regimes-proximal-hoof-circumference-young-thoroughbred-horses',
  },
  'ellipse-area': {
    text: 'Geometry: the area of an ellipse is π/4 times the product of its axes',
    says: 'The sole is taken as an ellipse of the width and length of the foot. No study of how well that fits was read.',
    provenance: 'from memory',
  },
  'growth-adult': {
    text: 'Horse Sport magazine, nutrition for hooves (no study named)',
    says: 'The wall grows 6 to 10 mm a month in grown horses, 12 to 15 in foals and yearlings.',
    provenance: 'read',
    address: 'https://horsesport.com/magazine_articles/nutrition-healthy-hooves/',
  },
  'kummer-2009': {
    text: 'Kummer et al. 2009, Vet. J. 179(3):401-406, doi:10.1016/j.tvjl.2007.10.029 (abstract)',
    says: 'Most measures differed between six farriers and between two trims by the same farrier.',
    provenance: 'read',
    address:
      'https://madbarn.com/research/comparison-of-the-trimming-procedure-of-six-different-farriers-by-quantitative-evaluation-of-hoof-radiographs',
  },
  'feif-toe-length': {
    text: 'FEIF, How to measure the length of a hoof, 19 May 2010',
    says: 'The length of a hoof is taken at mid-toe from the lower edge of the hairline to the ground, or to the ground side of the shoe.',
    provenance: 'read',
    address: 'https://www.feif.org/2010/05/19/how-to-measure-the-length-of-a-hoof/',
  },
  'turner-tape': {
    text: "Turner's list of measurements, American Farriers Journal, article 6066",
    says: 'Heel length is taken along the wall from the hairline to the ground; frog length and frog width each where they are greatest.',
    provenance: 'read',
    address: 'https://americanfarriers.com/articles/6066-balance-as-a-tale-of-the-tape',
  },
  'lungwitz-adams': {
    text: 'Lungwitz & Adams 1913, A Text-Book of Horseshoeing, 11th ed., Lippincott',
    says: 'The wall turns in at each heel, forms the buttress and runs forward as the bar; the branches of the frog lie between the bars, with a groove on each side; weight passes through the leaves to the wall, the bone sinks, and the cushion, pressed aside, spreads the quarters.',
    provenance: 'read',
    address: 'https://bitlit.ru/page/en/a-lungwitz/a-text-book-of-horseshoeing-for-horseshoers-and-veterinarians/25',
  },
  'mcclure-foot': {
    text: 'McClure, Functional Anatomy of the Horse Foot, University of Missouri Extension',
    says: 'Wall, bars and frog bear the weight and the sole is normally clear of the ground; in front feet the wall is thickest at the toe; under weight frog and cushion flatten and spread.',
    provenance: 'read',
    address: 'http://equinechronicle.com/functional-anatomy-of-the-horse-foot',
  },
  'minnesota-foot': {
    text: 'Bisected Equine Foot, veterinary anatomy course, University of Minnesota',
    says: 'The last bone of the limb hangs in the hoof wall by leaves, and through them its load passes to the wall and so to the ground.',
    provenance: 'read',
    address: 'http://vanat.cvm.umn.edu/run/plate7.html',
  },
  'measuring-walkthrough': {
    text: 'Measuring walk-through, rafalet.tripod.com (author and year not shown)',
    says: 'The sole is measured from the toe to the line of the heel buttresses and between its widest points; heel length along the horn differs from heel height.',
    provenance: 'read',
    address: 'https://rafalet.tripod.com/evalbalance2.htm',
  },
};

/** Firmness words that stand where a key would, for what has no source. */
export const withoutSource = ['common practice, no source', 'from memory'] as const;

const inWords: Readonly<Record<(typeof withoutSource)[number] | 'read second-hand', string>> = {
  'common practice, no source': say`common practice, no source`,
  'from memory': say`from memory`,
  'read second-hand': say`read second-hand`,
};

/**
 * A source in words for a reader.
 * @param source  a key of the bibliography, or the firmness words
 * @returns the reference's text, with ` (from memory)` or ` (read second-hand)` where that is how it is known, the firmness
 *   words in the reader's language; an unknown key, as a user's own range file may hold, comes back as it stands
 */
export function citation(source: string): string {
  const reference = Object.hasOwn(bibliography, source) ? bibliography[source] : undefined;
  if (!reference) return Object.hasOwn(inWords, source) ? inWords[source as keyof typeof inWords] : source;
  return reference.provenance === 'read' ? reference.text : `${reference.text} (${inWords[reference.provenance]})`;
}
