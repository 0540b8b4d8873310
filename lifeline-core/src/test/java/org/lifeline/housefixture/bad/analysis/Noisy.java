package org.lifeline.housefixture.bad.analysis;

import java.io.FileWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.DoubleSupplier;
import java.util.logging.Logger;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.Violation;
import org.lifeline.base.Violations;

/** Makes every noise that a library should not make. */
@SuppressWarnings({"DefaultCharset", "JavaTimeDefaultTimeZone", "StringCaseLocaleUsage"})
public final class Noisy {
    static int counter;
    static final HashMap<String, Double> CACHE = new HashMap<>();
    static final double[] TABLE = {1, 2};
    static final AtomicInteger TALLY = new AtomicInteger();

    private Noisy() {}

    static void prints() {
        System.out.println("noise");
    }

    static void printsTrace(RuntimeException e) {
        e.printStackTrace();
    }

    static void logs() {
        Logger.getLogger("noise").info("noise");
    }

    static String readsFile() throws IOException {
        return Files.readString(Path.of("noise"));
    }

    static void writesFile() throws IOException {
        new FileWriter("noise").close();
    }

    static void startsThread() {
        new Thread(Noisy::prints).start();
    }

    static ExecutorService makesPool() {
        return Executors.newCachedThreadPool();
    }

    static long streamsInParallel(List<String> list) {
        return list.parallelStream().count();
    }

    static CompletableFuture<Void> borrowsCommonPool() {
        return CompletableFuture.runAsync(Noisy::prints);
    }

    static long readsClock() {
        return System.currentTimeMillis();
    }

    static long readsNanoClock() {
        return System.nanoTime();
    }

    static LocalDate readsToday() {
        return LocalDate.now();
    }

    static Locale readsDefaultLocale() {
        return Locale.getDefault();
    }

    static String formatsInDefaultLocale() {
        return String.format("%.1f", 1.5);
    }

    static String lowersInDefaultLocale(String text) {
        return text.toLowerCase();
    }

    static String readsEnvironment() {
        return System.getenv("HOME");
    }

    static int rollsDice() {
        return new Random().nextInt(6);
    }

    static DoubleSupplier rollsDiceByReference() {
        return Math::random;
    }

    static void throwsAnything() {
        throw new RuntimeException("anything");
    }

    static Violation refusesInWords() {
        return new Violation("span", "3", "is bad");
    }

    static Violations addsInWords() {
        return new Violations().add("span", "3", "is bad");
    }

    static Violations requiresInWords() {
        return new Violations().require(false, "span", "3", "is bad");
    }

    static Violation takesTheCatchAll() {
        return Violation.of("span", GivenValue.count(3), InputRule.STATED, "is bad");
    }
}
