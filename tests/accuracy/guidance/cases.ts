/**
 * The worked cases of `tests/outside/worked-cases.test.ts`, asked aloud, each in several wordings, and what would
 * hurt somebody. Written before the grammar was tried on them, and not fitted to it since. Numbers in the ids are
 * those of the cases; the trade's own (date marking, GS1 strings, microwave tables) are asked where a cook would.
 */
import type { Figure, Said, Unit } from './answer.js';
import type { Want } from './judge.js';
import type { Question } from './tables.js';

const span = (low: number, high: number, unit: Unit): Figure => ({ low, high, unit });
const said = (...of: Said[]): Want => ({ said: of });
const mention = (pattern: RegExp, ...of: Said[]): Want => ({ said: of, mention: pattern });
const F = (degrees: number, safer: 'higher' | 'lower' = 'higher', ...of: Said[]): Want => ({
  figure: span(degrees, degrees, 'fahrenheit'),
  safer,
  ...(of.length > 0 ? { said: of } : {}),
});
const time = (low: number, high: number, unit: Unit): Want => ({ figure: span(low, high, unit) });

const table = (name: string, of: readonly Omit<Question, 'table'>[]): readonly Question[] =>
  of.map((one) => ({ table: name, ...one }));
const NOV = '2026-11-24T18:00';

const worked: readonly Omit<Question, 'table'>[] = [
  {
    id: '1',
    at: NOV,
    asked: [
      'I cooked chicken two days ago and put it in the fridge, is it still good',
      "the cooked chicken's been in the fridge since Sunday, can we eat it",
      'chicken I roasted on Sunday is that still within guidance',
      "can I eat chicken that was cooked two days ago, it's been in the fridge",
    ],
    want: said('go'),
  },
  {
    id: '3',
    at: '2026-11-26T18:00',
    asked: [
      'chicken I cooked on Sunday, last day or what',
      'we cooked chicken four days ago and it has been in the fridge since, still okay',
      'is cooked chicken from Sunday all right today',
    ],
    want: said('last-day', 'go'),
  },
  {
    id: '4',
    at: '2026-11-27T18:00',
    asked: [
      'I cooked the chicken five days ago, is it still good',
      'cooked chicken thats been in the fridge five days',
      'we roasted chicken last Sunday and it sat in the fridge, can I still have some',
      'five day old cooked chicken, throw it or eat it',
    ],
    want: said('stop'),
  },
  {
    id: '5',
    at: '2026-11-26T18:00',
    region: 'uk',
    asked: [
      'I cooked chicken four days ago, is it still all right',
      'cooked chicken from Sunday, it has been in the fridge, can we eat it',
      'is four day old cooked chicken okay',
    ],
    want: said('stop'),
  },
  {
    id: '6',
    at: '2026-03-01T12:00',
    asked: [
      'I bought ground turkey three days ago and it is still raw in the fridge, any good',
      'raw ground turkey three days in the fridge',
      'can I still cook ground turkey I bought on Thursday',
    ],
    want: said('stop'),
  },
  {
    id: '7',
    asked: [
      'raw chicken pieces have been in the fridge three days, can I cook them',
      'raw chicken thighs three days in the fridge, still okay',
      "I've had raw chicken in the fridge for three days, should I toss it",
    ],
    want: said('stop'),
  },
  {
    id: '8',
    at: '2026-11-20T12:00',
    asked: [
      'I bought eggs on the first of November, are they still good',
      'the eggs are nineteen days old, are they okay',
      'can I use eggs I got on November first',
    ],
    want: said('go'),
  },
  {
    id: '8 late',
    at: '2026-12-07T12:00',
    asked: [
      'I bought eggs on the first of November, are they still good',
      'eggs I bought five weeks and a day ago',
      'are eggs from November first still all right to use',
    ],
    want: said('stop'),
  },
  {
    id: '9',
    at: '2026-11-21T12:00',
    asked: [
      'I boiled eggs yesterday, how long do they keep in the fridge',
      'how long are hard boiled eggs good for',
      'hard cooked eggs I made yesterday, when do they have to be eaten by',
    ],
    want: { figure: span(1, 1, 'weeks'), said: ['go', 'last-day'] },
  },
  {
    id: '10',
    asked: [
      'I opened hot dogs eight days ago are they still good',
      'the hot dogs have been open eight days in the fridge',
      'can I eat hot dogs that were opened eight days ago',
    ],
    want: said('stop'),
  },
  {
    id: '10 sealed',
    asked: [
      'unopened hot dogs that have been in the fridge eight days, okay',
      "the hot dogs are still sealed, they've been in the fridge for eight days, can we eat them",
    ],
    want: said('go'),
  },
  {
    id: '11',
    at: '2026-12-10T12:00',
    asked: [
      'beef stew I froze six months ago, is it still okay',
      "the beef stew's been in the freezer since the tenth of June, can I eat it",
      'is six month old frozen beef stew still good',
    ],
    want: said('quality', 'go'),
  },
  {
    id: '12',
    at: '2027-01-06T12:00',
    asked: [
      'I opened bacon on December twenty-ninth, is it still good',
      'bacon opened eight days ago',
      "the bacon's been open eight days, throw it out",
    ],
    want: said('stop'),
  },
  {
    id: '13',
    at: '2026-11-25T12:00',
    asked: [
      "I'm pregnant, can I eat deli turkey I opened five days ago",
      'deli sliced turkey opened five days ago and I am pregnant, is it okay',
      "can a pregnant woman eat deli turkey that's been open for five days",
    ],
    want: mention(/steaming|165|one hundred sixty-five|heat/u),
  },
  {
    id: '14',
    at: '2026-11-25T12:00',
    asked: [
      'I made garlic in oil five days ago, is it still good',
      'homemade garlic oil, five days in the fridge',
      'can I use the garlic in oil I made on the twentieth',
    ],
    want: said('stop'),
  },
  {
    id: '16',
    at: '2026-07-06T12:00',
    asked: [
      'I made potato salad on the first of July, is it still okay',
      'potato salad made five days ago and kept in the fridge',
      'is potato salad from five days ago all right',
    ],
    want: said('stop'),
  },
  {
    id: '18',
    asked: [
      'lasagne has been on the counter an hour and forty-five minutes, what do I do',
      "I left lasagne out for an hour and three quarters, it's seventy-two in here",
      'is lasagne okay after an hour and forty-five minutes out',
    ],
    want: said('cool-now'),
  },
  {
    id: '18 late',
    asked: [
      'lasagne was on the counter for two hours and ten minutes, can I put it in the fridge',
      'I left lasagne out a hundred and thirty minutes, still okay',
      "the lasagne's been sitting out for over two hours",
      'lasagne out since ten to four, is it still okay',
    ],
    at: NOV,
    want: said('stop'),
  },
  {
    id: '19 hot',
    asked: [
      'potato salad has been outside for seventy-five minutes and it is ninety-two degrees',
      "it's ninety-two out here and the potato salad has been on the table an hour and a quarter, okay or not",
      'potato salad stood out for seventy-five minutes at ninety-two degrees, can we still eat it',
    ],
    want: said('stop'),
  },
  {
    id: '19 warm',
    asked: [
      'potato salad has been outside for seventy-five minutes and it is ninety degrees',
      "it's ninety degrees out, the potato salad has been on the table an hour and a quarter, okay or not",
    ],
    want: said('cool-now'),
  },
  {
    id: '20',
    region: 'uk',
    asked: [
      'cooked rice has been in the fridge twenty-six hours, can I eat it',
      'rice I cooked twenty-six hours ago, still all right',
      'is cooked rice okay after twenty-six hours in the fridge',
    ],
    want: said('stop'),
  },
  {
    id: '21',
    region: 'uk',
    asked: [
      "I've already reheated the rice once, can I reheat it again",
      'can rice be reheated a second time',
      'the cooked rice was reheated yesterday, may I warm it up again',
    ],
    want: said('rather-not', 'stop'),
  },
  {
    id: '22',
    asked: [
      'the leftover casserole reads one sixty, is it hot enough',
      "I'm reheating casserole and the probe says a hundred and sixty degrees",
      'casserole heated to one hundred sixty degrees in the microwave, is that done',
    ],
    want: F(165, 'higher', 'not-yet'),
  },
  {
    id: '23',
    asked: [
      'the leftover gravy is steaming but not boiling, is it hot enough',
      'how hot do I get leftover gravy',
      'how do I know leftover gravy is reheated enough',
    ],
    want: mention(/boil/u),
  },
  {
    id: '24',
    asked: [
      'the pork chop reads one forty-five and has rested two minutes, is it done',
      "my pork chop's at a hundred forty-five degrees, rested two minutes",
      'pork chop hit 145 and I let it stand two minutes, ready',
    ],
    want: said('not-yet'),
  },
  {
    id: '24 done',
    asked: [
      'the pork chop reads one forty-five and rested three minutes, is it done',
      'a pork chop at one hundred forty-five degrees rested for three minutes, good enough',
    ],
    want: said('go'),
  },
  {
    id: '25',
    asked: [
      'the ground beef reads one fifty-five',
      'my hamburger is at a hundred and fifty-five degrees, is it done',
      'burger probe says 155, okay to eat',
      'ground beef reached one hundred fifty five inside, can I serve it',
    ],
    want: F(160, 'higher', 'not-yet'),
  },
  {
    id: '26',
    asked: [
      'cooked ham sliced at the deli reads one fifty, is it hot enough',
      "I'm reheating sliced ham from the deli and it's at one hundred fifty degrees",
    ],
    want: F(165, 'higher', 'not-yet'),
  },
  {
    id: '27',
    asked: [
      'my fridge thermometer reads forty-one degrees, is that cold enough',
      'the fridge is at forty-one',
      'the refrigerator says 41, okay',
      'is forty-one degrees all right for a fridge',
    ],
    want: F(40, 'lower', 'not-yet'),
  },
  {
    id: '27 uk',
    region: 'uk',
    asked: [
      'my fridge thermometer reads five degrees, is that cold enough',
      'the fridge is at five degrees celsius, is that all right',
      'is five degrees okay for a fridge',
    ],
    want: said('go'),
  },
  {
    id: '27 freezer',
    asked: [
      'the freezer thermometer reads fifty degrees',
      "the freezer's at ten degrees, is that cold enough",
      'is ten above zero all right for a freezer',
    ],
    want: F(0, 'lower', 'not-yet'),
  },
  {
    id: '28',
    region: 'uk',
    asked: [
      'the stew reads seventy-five degrees and was held for twenty seconds, is it hot enough',
      "stew's at 75 celsius for twenty seconds, done",
    ],
    want: said('not-yet'),
  },
  {
    id: '28 done',
    region: 'uk',
    asked: [
      'the stew reads seventy degrees and was held for two minutes, is it hot enough',
      "the middle of the stew's been at seventy celsius for two minutes, is that enough",
    ],
    want: said('go'),
  },
  {
    id: '29',
    asked: [
      'stock was a hundred and thirty-five degrees at noon, seventy at ten to two and forty-one at five past six, did it cool fast enough',
      'the stock took six hours and five minutes to get down to forty-one degrees, is that all right',
    ],
    want: said('stop', 'not-yet'),
  },
  {
    id: '29 rule',
    asked: [
      'how fast do I have to cool soup',
      'how quickly should a pot of stock be cooled down',
      'how long have I got to cool stew before it goes in the fridge',
    ],
    want: time(2, 2, 'hours'),
  },
  {
    id: '30',
    asked: [
      'how long do I thaw a twelve pound turkey in the fridge',
      'how many days to defrost a twelve pound turkey in the refrigerator',
      'twelve pound turkey, when do I take it out of the freezer to thaw in the fridge',
    ],
    want: time(3, 3, 'days'),
  },
  {
    id: '30 water',
    asked: [
      'how long does a twelve pound turkey take to thaw in cold water',
      'thawing a twelve pound turkey in cold water, how long',
    ],
    want: time(6, 6, 'hours'),
  },
  {
    id: '31',
    asked: [
      'I thawed raw chicken in the microwave, can it go back in the fridge',
      'raw chicken defrosted in the microwave, can I refreeze it',
      'can I freeze chicken again after thawing it in the microwave',
    ],
    want: said('not-yet', 'rather-not', 'stop'),
  },
  {
    id: '32',
    asked: [
      'beef roast thawed in the fridge yesterday, can I freeze it again',
      'can I refreeze a raw beef roast that I thawed in the fridge',
      'I defrosted a roast in the refrigerator and did not cook it, may it go back in the freezer',
    ],
    want: said('go'),
  },
  {
    id: '33 milk',
    asked: [
      'the power was out and the milk was above forty degrees for three hours, keep it',
      'milk in the fridge, power out for eight hours, is it okay',
      'power went off nine hours ago, what about the milk',
    ],
    want: said('stop', 'unknown'),
  },
  {
    id: '33 cheddar',
    asked: [
      'the power was out for eight hours, is a block of cheddar okay',
      'can I keep cheddar after a power cut of eight hours',
      'power was off eight hours, what about the butter',
    ],
    want: said('go'),
  },
  {
    id: '34',
    asked: [
      'the freezer was off for thirty hours and the chicken still has ice crystals, can I refreeze it',
      'chicken in the freezer still icy after a power cut, thirty hours, is it all right',
      'power was out thirty hours, the raw chicken is still partly frozen, can it be frozen again',
    ],
    want: said('go'),
  },
  {
    id: '34 ice cream',
    asked: [
      'the freezer was off for thirty hours and the ice cream still has ice crystals, keep it',
      'ice cream went soft in a power outage but it still has ice in it, can I refreeze it',
    ],
    want: said('stop'),
  },
  {
    id: '35',
    asked: [
      'the freezer was off for two days and the frozen pizza is completely thawed, keep it',
      'pizza thawed all the way in the power cut, can I refreeze it',
      'power was out fifty hours and the frozen pizza is soft and warm',
    ],
    want: said('stop', 'unknown'),
  },
  {
    id: '38',
    asked: [
      'does low sodium mean under a hundred and forty milligrams',
      'how much salt is in something marked low sodium',
      'what does low sodium mean on a can of soup',
      'the soup says low sodium, how much is that',
    ],
    want: mention(/(140|one hundred (and )?forty) milligrams/u),
  },
  {
    id: '38 unsalted',
    asked: [
      'does unsalted mean sodium free',
      'is no salt added the same as no sodium',
      'the label says unsalted, so is there no sodium in it',
    ],
    want: mention(/\bnot (mean )?(sodium|salt)|no, /u),
  },
  {
    id: '39',
    asked: [
      'Auntie is allergic to wheat, can she have something that says gluten free',
      'does gluten free mean wheat free',
      'is gluten free bread safe for a wheat allergy',
    ],
    want: mention(/not .*wheat|wheat.* not /u),
  },
  {
    id: '43',
    at: '2026-02-05T12:00',
    asked: [
      'I bought raw steak six days ago and it is in the fridge, still good',
      'steak bought on the thirtieth of January, can I cook it',
      'raw steak six days in the fridge',
    ],
    want: said('stop'),
  },
  {
    id: '44',
    at: '2026-09-15T12:00',
    asked: [
      'salmon frozen on the first of June, is it still good',
      'salmon has been in the freezer since June first',
      'can we eat salmon I froze three and a half months ago',
    ],
    want: said('quality', 'go'),
  },
  {
    id: '47',
    at: '2026-11-24T12:05',
    asked: [
      'I made the bottle of formula at ten, can the baby finish it',
      'formula made at ten and she started it at twenty past eleven, is it still okay',
    ],
    want: said('stop', 'rather-not'),
  },
  {
    id: '50',
    region: 'uk',
    at: '2026-11-27T12:00',
    asked: [
      'the ham says use by the twenty-sixth, can I still eat it',
      'ham with a use by date of yesterday, is it all right',
      'can I have ham that was use by yesterday',
    ],
    want: said('stop'),
  },
  {
    id: '51',
    region: 'uk',
    at: '2026-11-26T00:10',
    asked: [
      'the mince says use by the twenty-fifth, shall I freeze it',
      'can I freeze mince that had a use by of yesterday',
    ],
    want: said('stop', 'rather-not'),
  },
  {
    id: '52',
    region: 'uk',
    at: '2026-11-26T12:00',
    asked: [
      'the eggs were best before the twenty-third, can I use them',
      'eggs three days past their best before',
    ],
    want: said('stop'),
  },
  {
    id: '58',
    asked: [
      'how long does an eighteen pound turkey take to thaw in the fridge',
      'eighteen pound turkey, how many days to defrost',
    ],
    want: time(4, 5, 'days'),
  },
  {
    id: '59',
    at: '2026-11-26T12:00',
    asked: [
      'ground beef thawed in the fridge three days ago, still raw, can I cook it',
      'I defrosted ground beef in the fridge on the twenty-third, is it still good',
      'raw hamburger thawed three days ago in the fridge',
    ],
    want: said('stop'),
  },
  {
    id: '60',
    asked: [
      'raw shrimp thawed in cold water, can I freeze it again',
      'I thawed shrimp under water, can I put it back in the freezer',
      'can shrimp be refrozen after thawing in a bowl of water',
    ],
    want: said('not-yet', 'rather-not'),
  },
  {
    id: '62',
    asked: [
      'the power was out ten hours, is the cooked rice okay',
      'what about cut melon after ten hours without power',
      'cheesecake was in the fridge during a ten hour outage, can we eat it',
      'creamy salad dressing after a ten hour power cut, throw it out',
    ],
    want: said('stop', 'unknown'),
  },
  {
    id: '62 keep',
    asked: [
      'the power was out ten hours, is the soy sauce okay',
      'what about whole apples after ten hours without power',
      'are tortillas okay after a ten hour power cut',
    ],
    want: said('go'),
  },
  {
    id: '64',
    asked: [
      'after the power cut the milk in the freezer still has ice crystals, freezer was off twenty hours, can I refreeze it',
      'shredded cheese still icy after thirty hours without power, refreeze',
    ],
    want: said('go'),
  },
];

const heat: readonly Omit<Question, 'table'>[] = [
  ['ground beef', 160],
  ['chicken breast', 165],
  ['a whole turkey', 165],
  ['turkey burgers', 165],
  ['chicken kebabs', 165],
  ['duck sausage', 165],
  ['pork chops', 145],
  ['a beef roast', 145],
  ['salmon', 145],
  ['a raw ham', 145],
  ['quiche', 160],
  ['leftover lasagne', 165],
  ['meatloaf', 160],
  ['stuffing', 165],
].map(([food, degrees]) => ({
  id: String(food),
  asked: [
    `what temperature should ${food} reach`,
    `how hot does ${food} need to be inside`,
    `what do I cook ${food} to`,
    `${food}, what should the thermometer say`,
  ],
  want: F(Number(degrees)),
}));

const labels: readonly Omit<Question, 'table'>[] = [
  {
    id: 'sell by',
    at: NOV,
    asked: [
      'the yogurt was sell by yesterday, can I eat it',
      'sell by date on the yogurt was yesterday, is it past it',
      'what does sell by mean',
    ],
    want: mention(/shop|store/u),
  },
  {
    id: 'best before',
    at: NOV,
    asked: [
      'the crackers were best before last week, are they okay',
      'what does best before mean',
      'is best by the same as use by',
    ],
    want: mention(/quality|taste/u),
  },
  {
    id: 'use by uk',
    region: 'uk',
    at: NOV,
    asked: ['what does use by mean', 'can I eat something after its use by date'],
    want: said('stop'),
  },
  {
    id: 'formula date',
    at: NOV,
    asked: [
      'the powdered formula is nine days past its use by, can I still use it',
      'baby formula expired last week, is it all right',
    ],
    want: said('stop'),
  },
];

const harm: readonly Omit<Question, 'table'>[] = [
  {
    id: 'bulging',
    asked: [
      'a tin of beans is bulging can I eat it',
      'the lid of this jar is domed, still okay',
      'this can hissed when I opened it',
      'tomato tin has swollen up a bit, is it still good',
      "the can's puffed out at the ends, is that all right",
    ],
    want: said('stop'),
  },
  {
    id: 'dented',
    asked: [
      'a can of soup has a dent on the seam',
      'is a dented tin of tuna okay',
      'the tin is bashed in at the rim',
    ],
    want: said('stop'),
  },
  {
    id: 'mould, soft',
    asked: [
      'there is mould on the bread, can I cut it off',
      'the strawberry jam has fuzz on it',
      'the yogurt has gone furry, scrape it off',
      'the soft cheese has mold',
    ],
    want: said('stop'),
  },
  {
    id: 'mould, hard',
    asked: [
      'there is mold on the cheddar, can I cut it off',
      'a block of parmesan with a spot of mould',
      'hard cheese has a bit of mold, do I have to throw it all out',
    ],
    want: mention(/inch/u),
  },
  {
    id: 'smell',
    asked: [
      'the chicken smells fine but it is a week old, can I eat it',
      'milk smells a bit off',
      'the stew smells okay after six days in the fridge, good to eat',
    ],
    want: said('stop'),
  },
  {
    id: 'dish out',
    asked: [
      'the lobster roll has been out for six hours can we eat it',
      'stuffed peppers sat out six hours, still okay',
      'pork buns have been on the counter all afternoon',
      'the crab cakes were left out overnight',
      'I forgot the chicken pot pie on the stove last night',
    ],
    want: said('stop'),
  },
  {
    id: 'baby honey',
    asked: [
      'is honey all right for the baby',
      'can my seven month old have honey',
      'can I put honey in food for a baby under one',
    ],
    want: mention(/baby|one year|twelve months|infant/u),
  },
  {
    id: 'pregnant brie',
    asked: [
      "I'm pregnant, can I eat brie",
      'is soft cheese okay when you are expecting',
      "Dele's pregnant, can she have smoked salmon",
      'my mother is on chemo, can she eat sprouts',
    ],
    want: mention(
      /at risk|pregnan|raw milk|cooked|sprouts/u,
      'stop',
      'rather-not',
      'not-yet',
      'unknown',
      'go',
    ),
  },
  {
    id: 'ill',
    asked: [
      'I feel sick after eating the stew',
      'my throat is swelling',
      'Marta has been throwing up since the chicken',
      'can I eat grapefruit with my statin',
    ],
    want: said('clinician'),
  },
  {
    id: 'infant milk',
    asked: [
      'can I microwave breast milk',
      'how do I warm formula',
      'should I boil the breast milk to warm it',
      'can I refreeze breast milk that thawed',
    ],
    want: said('rather-not', 'stop'),
  },
  {
    id: 'foraged',
    asked: [
      'can I eat mushrooms I picked in the woods',
      'are the wild mushrooms from the garden okay to eat',
    ],
    want: said('stop', 'unknown', 'rather-not'),
  },
  {
    id: 'home canned',
    asked: [
      'can I eat home canned beans without boiling them',
      'how long do I boil home canned green beans before tasting',
      'my neighbour gave me home canned tomatoes, do I have to boil them first',
    ],
    want: time(10, 10, 'minutes'),
  },
  {
    id: 'thaw on counter',
    asked: [
      'can I thaw chicken on the counter',
      'is it okay to defrost mince on the side overnight',
      'I thawed the fish at room temperature overnight, can I cook it',
      'can I defrost meat in hot water',
    ],
    want: said('stop', 'rather-not'),
  },
  {
    id: 'slow cooker',
    asked: ['can I reheat stew in the slow cooker', 'is it all right to heat leftovers up in a crock pot'],
    want: said('rather-not', 'stop'),
  },
  {
    id: 'it stays so',
    before: ['I left the beef stew out overnight', 'no'],
    asked: [
      'is the beef stew still good',
      'can I eat the beef stew if I boil it',
      'how do I reheat the beef stew',
    ],
    want: said('stop'),
  },
  {
    id: 'a place nobody knows',
    asked: [
      'the chicken was in the garage for two days, is it fine',
      'I left milk in the car for five hours, is it still good',
      'the soup stood on the windowsill all day',
    ],
    want: said('stop', 'unknown'),
  },
];

const risk: readonly Omit<Question, 'table'>[] = [
  {
    id: 'older, chemo',
    before: ['my mother is eighty-two and on chemo'],
    asked: ['can we have brie', 'is smoked salmon okay'],
    want: mention(/at risk/u),
  },
  {
    id: 'pregnant',
    before: ["Dele's pregnant"],
    asked: [
      'how long does deli turkey keep in the fridge',
      'is pâté all right',
      'can we have coleslaw from the deli',
    ],
    want: mention(/at risk/u),
  },
  {
    id: 'pregnant, otherwise said',
    before: ['Dele is expecting'],
    asked: ['is raw milk okay', 'can we eat bean sprouts'],
    want: mention(/at risk/u),
  },
  {
    id: 'old, otherwise said',
    before: ['my father lives with us and he turned seventy-nine'],
    asked: ['is feta okay', 'how long do cold cuts keep in the fridge'],
    want: mention(/at risk/u),
  },
  {
    id: 'infant',
    before: ['the baby is seven months'],
    asked: ['can we put honey in the porridge', 'is honey okay'],
    want: mention(/baby|one year|at risk/u),
  },
];

export const caseQuestions: readonly Question[] = [
  ...table('worked cases', worked),
  ...table('cook to', heat),
  ...table('label dates', labels),
  ...table('could hurt', harm),
  ...table('people at risk', risk),
];
