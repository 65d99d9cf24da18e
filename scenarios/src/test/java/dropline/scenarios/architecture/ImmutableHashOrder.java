package dropline.scenarios.architecture;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaMethodCall;
import java.util.Map;
import java.util.Set;

/** A call that makes a set or map whose iteration order may change from one start of Java to the next. */
final class ImmutableHashOrder extends DescribedPredicate<JavaMethodCall> {
    private static final Set<String> OWNERS = Set.of("java.util.Set", "java.util.Map");
    private static final Set<String> MAKERS = Set.of("of", "copyOf", "ofEntries");

    /** Collectors, with the number of arguments from which the caller chooses the kind of map himself. */
    private static final Map<String, Integer> COLLECTORS =
            Map.of("toSet", 9, "toUnmodifiableSet", 9, "toMap", 4, "toUnmodifiableMap", 9, "groupingBy", 3);

    ImmutableHashOrder() {
        super("its target makes a set or map in hash order");
    }

    @Override
    public boolean test(JavaMethodCall call) {
        String owner = call.getTargetOwner().getName();
        if (OWNERS.contains(owner)) {
            return MAKERS.contains(call.getName());
        }
        int arguments = call.getTarget().getRawParameterTypes().size();
        return "java.util.stream.Collectors".equals(owner) && arguments < COLLECTORS.getOrDefault(call.getName(), 0);
    }
}
