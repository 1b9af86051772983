/** The way between pages. */
const pages = [
  { id: 'talk', href: '/', name: 'Talk' },
  { id: 'kitchen', href: '/kitchen', name: 'Kitchen' },
  { id: 'labels', href: '/labels', name: 'Labels' },
  { id: 'plots', href: '/plots', name: 'Charts' },
] as const;

export const Menu = ({ here }: { here: (typeof pages)[number]['id'] }) => (
  <header>
    <a class="skip" href="#main">
      Skip to the page
    </a>
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
