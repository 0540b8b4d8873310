package org.lifeline.examples.programs;

import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.lifeline.design.envelope.DesignAnalysis;
import org.lifeline.design.envelope.Envelope;
import org.lifeline.design.envelope.WorstCases;

/** What a program looks at, by energy balance: the falls moved along the whole line, or the stated falls alone. */
final class LineScope implements AutoCloseable {
    private final boolean statedFalls;
    private final ExecutorService threads;

    private LineScope(boolean statedFalls, ExecutorService threads) {
        this.statedFalls = statedFalls;
        this.threads = threads;
    }

    static LineScope of(boolean statedFalls) {
        ExecutorService threads =
                Executors.newFixedThreadPool(Runtime.getRuntime().availableProcessors(), work -> {
                    Thread thread = new Thread(work, "arrests");
                    thread.setDaemon(true);
                    return thread;
                });
        return new LineScope(statedFalls, threads);
    }

    boolean isStatedFalls() {
        return statedFalls;
    }

    ExecutorService threads() {
        return threads;
    }

    Envelope envelope() {
        return Envelope.withDefaults().withExecutor(threads);
    }

    WorstCases analysis() {
        return statedFalls ? DesignAnalysis.withDefaults().withExecutor(threads) : envelope();
    }

    /** What the results rest on, as a sentence. */
    String words() {
        return statedFalls
                ? "Rests on the STATED FALLS ALONE, by ENERGY BALANCE; analyze looks at the whole line and in time."
                : "Rests on the falls moved along the WHOLE LINE, by ENERGY BALANCE; analyze looks in time as well.";
    }

    @Override
    public void close() {
        threads.shutdownNow();
    }
}
