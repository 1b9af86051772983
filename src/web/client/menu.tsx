/** The way between pages, and whose kitchen this is. */
import { useEffect } from 'preact/hooks';

const pages = [
  { id: 'board', href: '/', name: 'Board' },
  { id: 'home', href: '/home', name: 'Home' },
  { id: 'labels', href: '/labels', name: 'Labels' },
  { id: 'charts', href: '/charts', name: 'Charts' },
] as const;
export type PageId = (typeof pages)[number]['id'];

export const Menu = ({ here, household }: { here: PageId | null; household: string | null }) => {
  useEffect(() => {
    const page = pages.find(({ id }) => id === here)?.name;
    document.title = [page, household, 'Tellshelf'].filter(Boolean).join(' — ');
  }, [here, household]);
  return (
    <header>
      <a class="skip" href="#main">
        Skip to the page
      </a>
      {household !== null && <p class="household">{household}</p>}
      <nav aria-label="Pages">
        <ul>
          {pages.map((page) => (
            <li key={page.id}>
              <a href={page.href} aria-current={page.id === here ? 'page' : undefined}>
                {page.name}
              </a>
            </li>
          ))}
        </ul>
      </nav>
    </header>
  );
};
