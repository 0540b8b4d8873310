package org.lifeline.house;

import static com.tngtech.archunit.base.DescribedPredicate.describe;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.AccessTarget;
import com.tngtech.archunit.core.domain.AccessTarget.CodeUnitAccessTarget;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import java.text.DecimalFormatSymbols;
import java.util.Locale;
import java.util.Set;
import java.util.concurrent.Executor;
import java.util.stream.Collectors;

/** Methods and constructors of the JDK that a quiet library leaves alone. Names are "owner.method". */
final class QuietTargets {
    /** What starts, stops or borrows a thread that the caller did not pass. */
    static final DescribedPredicate<JavaAccess<?>> STARTS_THREADS =
            describe("the target starts threads", access -> startsThreads(access.getTarget()));

    /** What makes a result depend on more than its arguments. */
    static final DescribedPredicate<JavaAccess<?>> READS_HIDDEN_INPUTS = describe(
            "the target reads the clock, a default or chance", access -> readsHiddenInputs(access.getTarget()));

    /** A violation in words of its own, which has no code but {@code InputRule.STATED}. */
    static final DescribedPredicate<JavaAccess<?>> STATES_A_RULE_WITHOUT_CODE = describe(
            "the target states a rule without a code",
            access -> statesARuleWithoutCode(access.getOriginOwner(), access.getTarget()));

    /** Where the words of a caller are taken. */
    private static final Set<String> CATCH_ALL =
            Set.of("org.lifeline.base.Violation", "org.lifeline.base.Violations", "org.lifeline.base.InputRule");

    private static final Set<String> IN_WORDS = Set.of(
            "org.lifeline.base.Violation.<init>(String, String, String)",
            "org.lifeline.base.Violations.add(String, String, String)",
            "org.lifeline.base.Violations.require(boolean, String, String, String)");

    private static final Set<String> THREADS = Set.of(
            "java.lang.Thread.start",
            "java.lang.Thread.sleep",
            "java.lang.Thread.startVirtualThread",
            "java.lang.Thread.ofVirtual",
            "java.lang.Thread.ofPlatform",
            "java.util.concurrent.ForkJoinPool.commonPool");

    private static final Set<String> CLOCK_AND_DEFAULTS = Set.of(
            "java.lang.System.currentTimeMillis",
            "java.lang.System.nanoTime",
            "java.lang.System.getenv",
            "java.lang.System.getProperty",
            "java.lang.System.getProperties",
            "java.lang.System.lineSeparator",
            "java.util.Calendar.getInstance",
            "java.util.Locale.getDefault",
            "java.util.TimeZone.getDefault",
            "java.time.ZoneId.systemDefault",
            "java.nio.charset.Charset.defaultCharset");

    private static final Set<String> CHANCE = Set.of(
            "java.lang.Math.random",
            "java.lang.StrictMath.random",
            "java.util.UUID.randomUUID",
            "java.util.concurrent.ThreadLocalRandom.current",
            "java.util.random.RandomGenerator.getDefault",
            "java.util.random.RandomGenerator.of");

    /** Chance, or the clock, only if no argument says otherwise. */
    private static final Set<String> UNSEEDED = Set.of(
            "java.util.Random.<init>",
            "java.util.SplittableRandom.<init>",
            "java.util.random.RandomGeneratorFactory.create",
            "java.util.Date.<init>");

    /** The default locale, only if no argument says otherwise. */
    private static final Set<String> LOCALE_WANTED = Set.of(
            "java.lang.String.format",
            "java.lang.String.formatted",
            "java.lang.String.toLowerCase",
            "java.lang.String.toUpperCase",
            "java.io.PrintWriter.format",
            "java.io.PrintWriter.printf",
            "java.io.PrintStream.format",
            "java.io.PrintStream.printf",
            "java.text.DecimalFormat.<init>",
            "java.text.DecimalFormatSymbols.<init>",
            "java.text.DecimalFormatSymbols.getInstance",
            "java.text.NumberFormat.getInstance",
            "java.text.NumberFormat.getNumberInstance",
            "java.text.NumberFormat.getIntegerInstance",
            "java.text.NumberFormat.getPercentInstance",
            "java.time.format.DateTimeFormatter.ofPattern",
            "java.util.Formatter.<init>");

    private QuietTargets() {}

    private static boolean statesARuleWithoutCode(JavaClass origin, AccessTarget target) {
        if (CATCH_ALL.contains(origin.getName())) {
            return false;
        }
        if (target instanceof CodeUnitAccessTarget unit) {
            String parameters = unit.getRawParameterTypes().stream()
                    .map(JavaClass::getSimpleName)
                    .collect(Collectors.joining(", ", "(", ")"));
            return IN_WORDS.contains(unit.getOwner().getName() + "." + unit.getName() + parameters);
        }
        return target.getFullName().equals("org.lifeline.base.InputRule.STATED");
    }

    private static boolean startsThreads(AccessTarget target) {
        String owner = target.getOwner().getName();
        String name = target.getName();
        boolean makesAThread = name.equals("<init>")
                && (target.getOwner().isAssignableTo(Thread.class)
                        || owner.equals("java.util.Timer")
                        || owner.equals("java.util.concurrent.ForkJoinPool")
                        || owner.equals("java.util.concurrent.ThreadPoolExecutor")
                        || owner.equals("java.util.concurrent.ScheduledThreadPoolExecutor"));
        boolean parallelStream = name.equals("parallelStream")
                || (name.equals("parallel") && owner.startsWith("java.util.stream"))
                || (name.startsWith("parallel") && owner.equals("java.util.Arrays"));
        boolean commonPool = owner.startsWith("java.util.concurrent.Complet")
                && name.endsWith("Async")
                && !takes(target, Executor.class);
        return makesAThread
                || parallelStream
                || commonPool
                || owner.equals("java.util.concurrent.Executors")
                || THREADS.contains(owner + "." + name);
    }

    private static boolean readsHiddenInputs(AccessTarget target) {
        String owner = target.getOwner().getName();
        String full = owner + "." + target.getName();
        boolean now = owner.startsWith("java.time.")
                && (target.getName().equals("now") || full.startsWith("java.time.Clock.system"));
        return now
                || CLOCK_AND_DEFAULTS.contains(full)
                || CHANCE.contains(full)
                || owner.equals("java.security.SecureRandom")
                || (UNSEEDED.contains(full) && parameterCount(target) == 0)
                || (full.equals("java.util.Collections.shuffle") && parameterCount(target) == 1)
                || (LOCALE_WANTED.contains(full)
                        && !takes(target, Locale.class)
                        && !takes(target, DecimalFormatSymbols.class));
    }

    private static boolean takes(AccessTarget target, Class<?> type) {
        return target instanceof CodeUnitAccessTarget unit
                && unit.getRawParameterTypes().stream().anyMatch(p -> p.isEquivalentTo(type));
    }

    private static int parameterCount(AccessTarget target) {
        return target instanceof CodeUnitAccessTarget unit
                ? unit.getRawParameterTypes().size()
                : 0;
    }
}
