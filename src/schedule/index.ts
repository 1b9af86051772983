/** What is said at its time in the household: timers, reminders, the summary. */
export { calendarOf, type CalendarEntry } from './calendar.js';
export { listLine, wallOf, type WallPart } from './wall.js';
export { dueBetween, dueNow, heardChange, nextDueAt, type DueTelling } from './due.js';
export { isQuiet, nextSummaryAt, quietUntil } from './summary-time.js';
export { createScheduler, type HouseholdsPort, type Scheduler, type SchedulerOptions } from './scheduler.js';
export { keepTicking } from './ticking.js';
export { createWebhook, type WebhookOptions } from './webhook.js';
export { createPush, type Notice, type PushOptions } from './push.js';
export { createMqtt, topicOf, type MqttOptions } from './mqtt.js';
export type { Carrier, Delivery } from './telling.js';
