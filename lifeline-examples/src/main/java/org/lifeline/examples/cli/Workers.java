package org.lifeline.examples.cli;

import java.util.concurrent.Executor;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;

/**
 * Threads beside the calling one, which helps as well: as many as there are further processors. They end with the program and
 * do not keep it alive. Thread-safe.
 */
final class Workers implements Executor, AutoCloseable {
    private final ExecutorService service;

    private Workers(ExecutorService service) {
        this.service = service;
    }

    static Workers begin() {
        int further = Math.max(1, Runtime.getRuntime().availableProcessors() - 1);
        return new Workers(Executors.newFixedThreadPool(further, work -> {
            Thread thread = new Thread(work, "arrests");
            thread.setDaemon(true);
            return thread;
        }));
    }

    @Override
    public void execute(Runnable work) {
        service.execute(work);
    }

    @Override
    public void close() {
        service.shutdownNow();
    }
}
