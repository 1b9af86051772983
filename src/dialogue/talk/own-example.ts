/** One example of what may be said, out of her own kitchen rather than somebody else's. */
import { itemWithMarker, livingItems, placesIn, spareMarkers } from '../../kitchen/index.js';
import type { Item } from '../../kitchen/model.js';
import type { Say, Value } from '../../speech/answer.js';
import { placeNoun } from '../describe/place.js';
import { markerNoun } from '../describe/touch.js';
import { type Turn, say } from '../handler.js';

/** What was put away or spoken of last is what she has in mind. */
const mineFirst = ({ kitchen, memory }: Turn): readonly Item[] => {
  const living = livingItems(kitchen);
  const near = new Set([...memory.items, ...memory.lastAdded]);
  return [...living.filter(({ id }) => near.has(id)), ...living.filter(({ id }) => !near.has(id))];
};

const example = (how: string, args: Readonly<Record<string, Value>>): readonly Say[] => [
  say(`example-${how}`, args),
];

/** For a topic of help; none where her kitchen has nothing of it. */
export const ownExample = (turn: Turn, topic: string): readonly Say[] => {
  const { kitchen } = turn;
  const items = mineFirst(turn);
  const [item] = items;
  switch (topic) {
    case 'markers': {
      const marked = items.find(({ markerId }) => markerId !== null && kitchen.markers.has(markerId));
      if (marked)
        return example('marked', {
          name: marked.name,
          marker: markerNoun(kitchen.markers.get(marked.markerId!)!),
        });
      const [spare] = spareMarkers(kitchen).filter(({ id }) => !itemWithMarker(kitchen, id));
      return item && spare ? example('mark', { name: item.name, marker: markerNoun(spare) }) : [];
    }
    case 'list': {
      const [entry] = kitchen.purchases.values();
      return entry ? example('listed', { name: entry.name }) : [];
    }
    case 'people': {
      const person = [...kitchen.people.values()].find(({ id }) => id !== turn.speaker.personId);
      return person ? example('person', { name: person.name }) : [];
    }
    case 'places': {
      const [place] = placesIn(kitchen, item?.placeId ?? null).length
        ? placesIn(kitchen, item?.placeId ?? null)
        : placesIn(kitchen, null);
      return place ? example('place', { name: placeNoun(kitchen, place.id) }) : [];
    }
    case 'heating': {
      const heated = items.find(({ preparations }) => preparations.length > 0) ?? null;
      return heated ? example('heated', { name: heated.name }) : [];
    }
    case 'dates': {
      const dated = items.find(({ dates }) => Object.keys(dates).length > 0);
      return dated ? example('dated', { name: dated.name }) : [];
    }
    case 'finding':
      return item ? example('found', { name: item.name }) : [];
    case 'using':
      return item ? example('used', { name: item.name }) : [];
    default:
      return [];
  }
};

/** Two of her foods, for help in general: one to find, one to heat or ask the age of. */
export const ownNames = (turn: Turn): Readonly<Record<string, Value>> => {
  const items = mineFirst(turn);
  const heated = items.find(({ preparations }) => preparations.length > 0) ?? items[1] ?? items[0];
  return items[0] && heated ? { name: items[0].name, heated: heated.name } : {};
};
