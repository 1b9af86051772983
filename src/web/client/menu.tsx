/** The way between pages, and whose kitchen this is. */
import { useEffect } from 'preact/hooks';
import { t } from './language.js';

const pages = [
  { id: 'board', href: '/' },
  { id: 'home', href: '/home' },
  { id: 'labels', href: '/labels' },
  { id: 'charts', href: '/charts' },
  { id: 'teach', href: '/teach' },
] as const;
export type PageId = (typeof pages)[number]['id'];

export const Menu = ({ here, household }: { here: PageId | null; household: string | null }) => {
  useEffect(() => {
    document.title = [here === null ? null : t(`page-${here}`), household, 'Tellshelf']
      .filter(Boolean)
      .join(' — ');
  }, [here, household]);
  return (
    <header>
      <a class="skip" href="#main">
        {t('skip')}
      </a>
      {household !== null && <p class="household">{household}</p>}
      <nav aria-label={t('pages')}>
        <ul>
          {pages.map((page) => (
            <li key={page.id}>
              <a href={page.href} aria-current={page.id === here ? 'page' : undefined}>
                {t(`page-${page.id}`)}
              </a>
            </li>
          ))}
        </ul>
      </nav>
    </header>
  );
};
