/** The page at a wrong address: it says so and leads back. Needs no script and holds nothing private. */
export const lostPage = (): string => `<!doctype html>
<html lang="en">
  <head>
    <meta charset="utf-8" />
    <meta name="viewport" content="width=device-width, initial-scale=1" />
    <meta name="color-scheme" content="light dark" />
    <title>No such page — Tellshelf</title>
    <link rel="stylesheet" href="/style.css" />
  </head>
  <body>
    <main id="main">
      <h1>There is no page at this address</h1>
      <ul>
        <li><a href="/">The board: what is in the kitchen, and talking to it</a></li>
        <li><a href="/home">Home: people, devices, settings</a></li>
        <li><a href="/labels">Labels</a></li>
        <li><a href="/charts">Charts</a></li>
      </ul>
    </main>
  </body>
</html>
`;
