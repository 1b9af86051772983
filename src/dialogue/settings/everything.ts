/** "Read me what you know of my kitchen": places, people, markers and their meanings, settings, and how much food. */
import { countedHere, livingItems, placesIn, spareMarkers } from '../../kitchen/index.js';
import type { Say } from '../../speech/answer.js';
import { raised } from '../describe/touch.js';
import { type Reply, type Turn, list, say } from '../handler.js';

const placesSaid = (turn: Turn): readonly Say[] => {
  const wholes = placesIn(turn.kitchen, null);
  if (wholes.length === 0) return [say('known-no-places')];
  const told = wholes.map(({ id, name }) => {
    const parts = placesIn(turn.kitchen, id);
    const kinds = [...new Set(parts.map(({ kind }) => kind))];
    const counted = kinds.map((kind) =>
      say('place-part', { kind, count: parts.filter((part) => part.kind === kind).length }),
    );
    return parts.length > 0
      ? say('told-whole-with', { name, parts: list(counted) })
      : say('told-whole', { name });
  });
  return [say('known-places', { places: list(told) })];
};

const peopleSaid = ({ kitchen }: Turn): readonly Say[] => {
  const here = [...kitchen.people.values()].filter(({ eatsHere }) => eatsHere);
  if (here.length === 0) return [say('known-nobody')];
  const told = here.map(({ name, allergens, diets = [], atRisk }) =>
    say('told-eater', {
      name,
      ...(allergens.length > 0 ? { allergens: list(allergens, true) } : {}),
      ...(diets.length > 0 ? { diets: list(diets) } : {}),
      ...(atRisk ? { risk: 'yes' } : {}),
    }),
  );
  return [say('known-people', { people: list(told) })];
};

const markersSaid = (turn: Turn): readonly Say[] => {
  const { markers, household } = turn.kitchen;
  const kind = countedHere(turn.kitchen);
  const meanings = Object.entries(household.dotMeanings).map(([n, meaning]) =>
    say('dots-mean', { dots: Number(n), raised: raised(Number(n), kind), meaning }),
  );
  return [
    markers.size > 0
      ? say('known-markers', { count: markers.size, spare: spareMarkers(turn.kitchen).length })
      : say('no-markers'),
    ...meanings,
  ];
};

export const everything = (turn: Turn): Reply => {
  const { microwaveWatts, region } = turn.kitchen.household;
  const foods = livingItems(turn.kitchen).length;
  return {
    parts: [
      ...placesSaid(turn),
      ...peopleSaid(turn),
      say('known-foods', { count: foods }),
      ...markersSaid(turn),
      ...(microwaveWatts === null ? [] : [say('watts-are', { watts: microwaveWatts })]),
      say('guidance-is', { region }),
    ],
    count: foods,
  };
};
