package org.lifeline.analysis;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.model.Attachment;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.PlausibleLine;
import org.lifeline.model.Support;

/**
 * The arrest in time over the energy balance, at the worse limit of the attachment, over random plausible lines: quantiles
 * of the ratio by kind of line. The table is written to {@code target/time-against-balance.csv}; the one that the theory
 * page quotes is stored beside this test. In the suite a few lines are held to the range of the stored table; with {@code
 * -Dlifeline.long=true} 2000 are, or as many as {@code -Dlifeline.comparison} says.
 */
class TimeAgainstBalanceTest {
    private static final int FEW = 3;
    private static final int MANY = 2000;

    /** What is compared. */
    private enum Compared {
        END_LOAD,
        POST_LOAD,
        TENSION,
        ARREST_FORCE,
        FALL_DISTANCE;

        double of(ArrestResult r) {
            return switch (this) {
                case END_LOAD -> r.endAnchorLoad();
                case POST_LOAD -> postLoad(r);
                case TENSION -> r.maximumTension();
                case ARREST_FORCE -> r.arrestForce();
                case FALL_DISTANCE -> r.totalFallDistance();
            };
        }
    }

    private static double postLoad(ArrestResult r) {
        return r.line().supports().stream()
                .filter(s -> !s.isEnd())
                .mapToDouble(s -> r.anchorLoad(s.id()))
                .max()
                .orElse(Double.NaN);
    }

    private static String kind(Lifeline line, Fall fall) {
        boolean inline =
                line.supports().stream().anyMatch(s -> s.inlineAbsorber().isPresent());
        boolean elastic = line.supports().stream().map(Support::stiffness).anyMatch(k -> !k.isRigid());
        String spans = line.spans() == 1 ? "one span" : "several spans";
        String attachment = fall.fallers().get(0).attachment() == Attachment.GRIPPED ? "gripped" : "free-running";
        return spans + ", " + attachment + (inline ? ", in-line absorber" : elastic ? ", elastic" : "");
    }

    private static void compare(long seed, Map<String, Map<Compared, List<Double>>> all) {
        PlausibleLine p = new PlausibleLine(seed, false);
        Lifeline line = p.line();
        Fall fall = p.fall();
        try {
            AttachmentLimits balance = EnergyBalance.withDefaults().solveLimits(line, fall);
            ArrestResult time = TransientArrest.withDefaults()
                    .withDuration(1.5)
                    .withSampling(0.05)
                    .withRefinements(0)
                    .solve(line, fall)
                    .arrest();
            for (String kind : List.of("all", kind(line, fall))) {
                for (Compared c : Compared.values()) {
                    double ratio = c.of(time) / balance.largest(c::of).value();
                    if (!Double.isNaN(ratio)) {
                        all.computeIfAbsent(kind, k -> new EnumMap<>(Compared.class))
                                .computeIfAbsent(c, k -> new ArrayList<>())
                                .add(ratio);
                    }
                }
            }
        } catch (NoEquilibriumException e) {
            all.computeIfAbsent("no equilibrium", k -> new EnumMap<>(Compared.class));
        }
    }

    private static double quantile(List<Double> sorted, double share) {
        double at = share * (sorted.size() - 1);
        int low = (int) at;
        int high = Math.min(low + 1, sorted.size() - 1);
        return sorted.get(low) + (at - low) * (sorted.get(high) - sorted.get(low));
    }

    private static String table(Map<String, Map<Compared, List<Double>>> all) {
        StringBuilder b = new StringBuilder("kind,quantity,lines,min,q05,q50,q95,q99,max\n");
        all.forEach((kind, quantities) -> quantities.forEach((c, ratios) -> {
            List<Double> sorted = ratios.stream().sorted().toList();
            b.append(String.format(
                    Locale.ROOT,
                    "\"%s\",%s,%d,%.3f,%.3f,%.3f,%.3f,%.3f,%.3f%n",
                    kind,
                    c,
                    sorted.size(),
                    sorted.get(0),
                    quantile(sorted, 0.05),
                    quantile(sorted, 0.5),
                    quantile(sorted, 0.95),
                    quantile(sorted, 0.99),
                    sorted.get(sorted.size() - 1)));
        }));
        return b.toString();
    }

    @Test
    void theRatiosLieInTheStoredRange() throws IOException {
        int lines = Integer.getInteger("lifeline.comparison", Boolean.getBoolean("lifeline.long") ? MANY : FEW);
        Map<String, Map<Compared, List<Double>>> all = new TreeMap<>();
        for (long seed = 0; seed < lines; seed++) {
            compare(seed, all);
        }
        if (lines > FEW) {
            Files.writeString(Path.of("target", "time-against-balance.csv"), table(all));
        }
        Map<String, double[]> stored = stored();
        for (Map.Entry<Compared, List<Double>> each :
                Objects.requireNonNull(all.get("all")).entrySet()) {
            double[] range = Objects.requireNonNull(stored.get(each.getKey().name()));
            for (double ratio : each.getValue()) {
                assertThat(ratio).as("%s", each.getKey()).isBetween(range[0] - 0.001, range[1] + 0.001);
            }
        }
    }

    /** Least and largest ratio of all lines, by quantity. */
    private static Map<String, double[]> stored() throws IOException {
        Map<String, double[]> map = new LinkedHashMap<>();
        try (InputStream in = TimeAgainstBalanceTest.class.getResourceAsStream("time-against-balance.csv")) {
            String text = new String(Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8);
            for (String row : text.lines().filter(r -> r.startsWith("\"all\"")).toList()) {
                String[] w = row.split(",", -1);
                map.put(w[1], new double[] {Double.parseDouble(w[3]), Double.parseDouble(w[8])});
            }
        }
        return map;
    }
}
