package dropline.harness.finding;

import dropline.bus.chance.Draws;
import dropline.bus.trace.TraceSink;
import java.lang.reflect.InvocationHandler;
import java.lang.reflect.Method;
import java.lang.reflect.Proxy;
import org.jspecify.annotations.Nullable;

/**
 * Mixes every event into one number, so that two traces can be told apart; any sink, whatever kinds of event it has.
 */
final class TraceHash implements InvocationHandler {
    private long hash;

    TraceSink sink() {
        return (TraceSink)
                Proxy.newProxyInstance(TraceSink.class.getClassLoader(), new Class<?>[] {TraceSink.class}, this);
    }

    long hash() {
        return hash;
    }

    @Override
    public @Nullable Object invoke(Object proxy, Method method, Object[] arguments) {
        long mixed = Draws.mix(hash + method.getName().hashCode());
        for (Object argument : arguments) {
            mixed = Draws.mix(mixed * 31 + ((Number) argument).longValue());
        }
        hash = mixed;
        return null;
    }
}
