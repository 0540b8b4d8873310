package org.lifeline.benchmarks;

import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.util.Locale;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.lifeline.design.study.MonteCarlo;
import org.lifeline.design.study.MonteCarloResult;

/**
 * One long Monte Carlo study of a single span, for its peak memory: run it with a small heap, such as
 * {@code java -Xmx48m -cp benchmarks.jar org.lifeline.benchmarks.StudyRun 1000000 1}.
 */
public final class StudyRun {
    private StudyRun() {}

    /**
     * Runs the study and prints throughput, peak heap and the results, the same for any number of threads.
     *
     * @param args number of cases; number of threads beside the one that starts the study
     */
    public static void main(String[] args) {
        long cases = args.length > 0 ? Long.parseLong(args[0]) : 1_000_000;
        int helpers = args.length > 1 ? Integer.parseInt(args[1]) : 0;
        ExecutorService pool = Executors.newFixedThreadPool(Math.max(1, helpers));
        try {
            MonteCarlo study = MonteCarlo.withSeed(1);
            long start = System.nanoTime();
            MonteCarloResult r = (helpers == 0 ? study : study.withExecutor(pool))
                    .solve(Studies.singleSpan(), Studies.uncertain(), Studies.load(), cases);
            double seconds = 1e-9 * (System.nanoTime() - start);
            long peak = 0;
            for (MemoryPoolMXBean each : ManagementFactory.getMemoryPoolMXBeans()) {
                peak += each.getType() == MemoryType.HEAP ? each.getPeakUsage().getUsed() : 0;
            }
            System.out.println(String.format(
                    Locale.ROOT,
                    "%d cases (%d failed) in %.1f s: %.0f per second; peak of the heap pools %.1f MB of %.0f MB",
                    r.cases(),
                    r.failed(),
                    seconds,
                    r.cases() / seconds,
                    peak / 1e6,
                    Runtime.getRuntime().maxMemory() / 1e6));
            r.summaries()
                    .forEach(s -> System.out.println(s.response() + " mean " + s.mean() + " deviation " + s.deviation()
                            + " 99 % " + s.quantile(0.99)));
        } finally {
            pool.shutdown();
        }
    }
}
