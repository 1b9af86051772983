/** `tellshelf/client`: for programs that speak with a Tellshelf service, in Node.js 20.19 or later and in browsers. */
export { createClient, pair, ServiceProblem, ServiceUnreachable } from './http.js';
export type { Client, ClientOptions, PairOptions } from './http.js';
export { openConversation, TurnRefused } from './conversation.js';
export type { ConversationOptions, ConversationState, OpenConversation, SocketLike } from './conversation.js';
export type * from './types.js';
