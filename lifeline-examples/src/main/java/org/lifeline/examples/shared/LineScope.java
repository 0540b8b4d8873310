package org.lifeline.examples.shared;

import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.lifeline.design.envelope.DesignAnalysis;
import org.lifeline.design.envelope.Envelope;
import org.lifeline.design.envelope.WorstCases;

/** What a program looks at, by energy balance: the falls moved along the whole line, or the stated falls alone. */
public final class LineScope implements AutoCloseable {
    private final boolean statedFalls;
    private final ExecutorService threads;

    private LineScope(boolean statedFalls, ExecutorService threads) {
        this.statedFalls = statedFalls;
        this.threads = threads;
    }

    public static LineScope of(boolean statedFalls) {
        ExecutorService threads =
                Executors.newFixedThreadPool(Runtime.getRuntime().availableProcessors(), work -> {
                    Thread thread = new Thread(work, "arrests");
                    thread.setDaemon(true);
                    return thread;
                });
        return new LineScope(statedFalls, threads);
    }

    public boolean isStatedFalls() {
        return statedFalls;
    }

    public ExecutorService threads() {
        return threads;
    }

    public Envelope envelope() {
        return Envelope.withDefaults().withExecutor(threads);
    }

    public WorstCases analysis() {
        return statedFalls ? DesignAnalysis.withDefaults().withExecutor(threads) : envelope();
    }

    /** What the results rest on, as a sentence. */
    public String words() {
        return words(statedFalls);
    }

    /** What results by energy balance rest on, as a sentence: the stated falls alone, or all along the line. */
    public static String words(boolean statedFalls) {
        return statedFalls
                ? "Rests on the STATED FALLS ALONE, by ENERGY BALANCE; analyze looks at the whole line and in time."
                : "Rests on the falls moved along the WHOLE LINE, by ENERGY BALANCE; analyze looks in time as well.";
    }

    @Override
    public void close() {
        threads.shutdownNow();
    }
}
