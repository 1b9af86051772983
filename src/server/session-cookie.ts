/** Name of the cookie that holds a page's session. */
export const SESSION_COOKIE = 'tellshelf_session';
