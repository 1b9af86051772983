/** What a device may do, and whose it is, to choose. */
import type { z } from 'zod';
import type { device } from '../../../shared/wire/devices.js';
import type { PersonView } from '../../../shared/wire/home.js';
import { t } from './language.js';

export type Scope = z.infer<typeof device>['scope'];

const scopes: readonly Scope[] = ['speak', 'help', 'own'];

export const RoleChoice = ({
  id,
  value,
  choose,
}: {
  id: string;
  value: Scope;
  choose: (scope: Scope) => void;
}) => (
  <select id={id} value={value} onChange={(event) => choose(event.currentTarget.value as Scope)}>
    {scopes.map((scope) => (
      <option key={scope} value={scope}>
        {t(`role-${scope}`)}
      </option>
    ))}
  </select>
);

export const PersonChoice = ({
  id,
  people,
  value,
  choose,
}: {
  id: string;
  people: readonly PersonView[];
  value: string;
  choose: (id: string) => void;
}) => (
  <select id={id} value={value} onChange={(event) => choose(event.currentTarget.value)}>
    <option value="">{t('device-everybodys')}</option>
    {people.map((person) => (
      <option key={person.id} value={person.id}>
        {person.name}
      </option>
    ))}
  </select>
);
