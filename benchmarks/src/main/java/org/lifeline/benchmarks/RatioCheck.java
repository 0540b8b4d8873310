package org.lifeline.benchmarks;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collection;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.openjdk.jmh.profile.GCProfiler;
import org.openjdk.jmh.results.Result;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.Options;
import org.openjdk.jmh.runner.options.OptionsBuilder;

/**
 * Runs the benchmarks and compares their ratios to the bare kernel with stored ones: fails where one has grown by more
 * than a quarter, and where a stored one was not measured. Ratios are between medians of one run, so that the machine
 * matters little and interruptions less.
 *
 * <p>{@code RatioCheck stored.json} compares; {@code RatioCheck stored.json new.json "CPU name"} writes as well.
 */
public final class RatioCheck {
    private static final String BYTES = ".bytes";

    /** Name of the bare chain's time for a node and a step, and what such times of motions begin with. */
    private static final String NODE_STEP = "nodeStep";

    private static final Pattern NUMBER = Pattern.compile("\"([\\w.-]+)\": ([0-9.]+)");

    private RatioCheck() {}

    /**
     * Runs the check.
     *
     * @param args file of the stored ratios; file to write to and name of the CPU, if wanted
     * @throws IOException if a file cannot be read or written
     * @throws RunnerException if a benchmark cannot be run
     */
    public static void main(String[] args) throws IOException, RunnerException {
        // First of all: the run may write to the same file.
        Map<String, Double> stored = read(Path.of(args[0]));
        Options options = new OptionsBuilder()
                .include("SolveBenchmark")
                .include("ScalingBenchmark")
                .include("ScriptedBenchmark")
                .include("DesignBenchmark")
                .include("BareChainBenchmark")
                .include("MotionBenchmark.threeSeconds")
                .include("ArrestInTimeBenchmark")
                .addProfiler(GCProfiler.class)
                .build();
        Map<String, Double> ratios = ratios(new Runner(options).run());
        if (args.length > 2) {
            Files.writeString(Path.of(args[1]), json(ratios, args[2]), StandardCharsets.UTF_8);
        }
        RatioComparison comparison = RatioComparison.of(stored, ratios);
        System.out.print(comparison.text());
        if (!comparison.passes()) {
            System.exit(1);
        }
    }

    private static Map<String, Double> ratios(Collection<RunResult> results) {
        Map<String, Double> medians = new TreeMap<>();
        Map<String, Double> ratios = new TreeMap<>();
        Map<String, Double> nodeSteps = new TreeMap<>();
        for (RunResult each : results) {
            Result<?> time = each.getPrimaryResult();
            StringBuilder name = new StringBuilder(time.getLabel());
            for (String key : each.getParams().getParamsKeys()) {
                name.append('.').append(each.getParams().getParam(key));
            }
            medians.put(name.toString(), time.getStatistics().getPercentile(50) * nanoseconds(time.getScoreUnit()));
            each.getSecondaryResults().forEach((label, result) -> {
                if (label.endsWith("gc.alloc.rate.norm")) {
                    ratios.put(name + BYTES, result.getScore());
                } else if (label.equals("nodeSteps")) {
                    nodeSteps.put(NODE_STEP + name, result.getScore() * nanoseconds(result.getScoreUnit()));
                }
            });
        }
        double kernel = medians.getOrDefault("kernel", Double.NaN);
        medians.forEach((name, median) -> ratios.put(name, median / kernel));
        double chain = medians.getOrDefault(NODE_STEP, Double.NaN);
        nodeSteps.forEach((name, step) -> ratios.put(name, step / chain));
        ratios.put("kernel", kernel);
        ratios.put("exponent", exponent(medians, "free."));
        ratios.put("exponent.plain", exponent(medians, "plain."));
        return ratios;
    }

    private static double nanoseconds(String unit) {
        return unit.startsWith("ms") ? 1e6 : unit.startsWith("us") ? 1e3 : 1;
    }

    /** Exponent of the cost in the number of spans, by least squares on the logarithms. */
    private static double exponent(Map<String, Double> medians, String series) {
        double n = 0;
        double sx = 0;
        double sy = 0;
        double sxx = 0;
        double sxy = 0;
        for (Map.Entry<String, Double> each : medians.entrySet()) {
            if (each.getKey().startsWith(series)) {
                double x = Math.log(Integer.parseInt(each.getKey().substring(series.length())));
                double y = Math.log(each.getValue());
                n++;
                sx += x;
                sy += y;
                sxx += x * x;
                sxy += x * y;
            }
        }
        return (n * sxy - sx * sy) / (n * sxx - sx * sx);
    }

    static String json(Map<String, Double> ratios, String cpu) {
        StringBuilder b = new StringBuilder();
        b.append("{\n  \"cpu\": \"").append(cpu.replaceAll("[\"\\\\]", "")).append("\",\n");
        b.append("  \"jdk\": \"")
                .append(System.getProperty("java.vm.name"))
                .append(' ')
                .append(System.getProperty("java.runtime.version"))
                .append(
                        "\",\n  \"unit\": \"kernel in ns, exponent in 1, bytes in bytes, nodeStepthreeSeconds in bare chains (nodeStep), all others in kernels\"");
        ratios.forEach((name, value) -> {
            // What is no number was not measured, and is not stored.
            if (Double.isFinite(value)) {
                b.append(String.format(Locale.ROOT, ",%n  \"%s\": %.3f", name, value));
            }
        });
        return b.append("\n}\n").toString();
    }

    static Map<String, Double> read(Path file) throws IOException {
        Map<String, Double> map = new TreeMap<>();
        Matcher m = NUMBER.matcher(Files.readString(file, StandardCharsets.UTF_8));
        while (m.find()) {
            map.put(m.group(1), Double.valueOf(m.group(2)));
        }
        return map;
    }
}
