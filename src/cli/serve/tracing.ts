/**
 * OpenTelemetry traces, sent over OTLP/HTTP to where OTEL_EXPORTER_OTLP_ENDPOINT (or
 * OTEL_EXPORTER_OTLP_TRACES_ENDPOINT) says. The other OTEL_ variables of its specification hold too:
 * headers, sampler, service name. Loaded only when asked for: it would double the time to start.
 */
import type { Span } from '@opentelemetry/api';
import type { Tracing } from '../../turn/index.js';

export interface OpenTracing {
  readonly tracing: Tracing;
  /** Sends what is left and stops. */
  close(): Promise<void>;
}

/** Null when the environment names no collector. */
export const openTracing = async (
  environment: Readonly<Record<string, string | undefined>>,
): Promise<OpenTracing | null> => {
  const wanted =
    environment['OTEL_EXPORTER_OTLP_ENDPOINT'] ?? environment['OTEL_EXPORTER_OTLP_TRACES_ENDPOINT'];
  if (!wanted || environment['OTEL_SDK_DISABLED'] === 'true') return null;
  const [{ SpanStatusCode }, { BatchSpanProcessor, NodeTracerProvider }, { OTLPTraceExporter }, resources] =
    await Promise.all([
      import('@opentelemetry/api'),
      import('@opentelemetry/sdk-trace-node'),
      import('@opentelemetry/exporter-trace-otlp-http'),
      import('@opentelemetry/resources'),
    ]);
  const provider = new NodeTracerProvider({
    resource: resources.defaultResource().merge(
      resources.resourceFromAttributes({
        'service.name': environment['OTEL_SERVICE_NAME'] ?? 'tellshelf',
      }),
    ),
    spanProcessors: [new BatchSpanProcessor(new OTLPTraceExporter())],
  });
  // Makes the span under way known across waiting, so that parts hang under their turn.
  provider.register();
  const tracer = provider.getTracer('tellshelf');

  const failed = (span: Span, error: unknown): never => {
    // The error's kind, not its message, which may hold what was said.
    span.setStatus({ code: SpanStatusCode.ERROR, message: error instanceof Error ? error.name : 'error' });
    span.end();
    throw error;
  };

  const tracing: Tracing = {
    span: (name, work) =>
      tracer.startActiveSpan(name, (span) => {
        try {
          const result = work((facts) => void span.setAttributes(facts));
          if (!(result instanceof Promise)) {
            span.end();
            return result;
          }
          return result.then(
            (value: unknown) => {
              span.end();
              return value;
            },
            (error: unknown) => failed(span, error),
          ) as typeof result;
        } catch (error) {
          return failed(span, error);
        }
      }),
  };
  // A collector that is away must not make stopping fail.
  return { tracing, close: () => provider.shutdown().catch(() => undefined) };
};
