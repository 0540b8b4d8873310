package org.lifeline.design.envelope;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.analysis.Statics;
import org.lifeline.base.Direction;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.model.Fall;
import org.lifeline.model.Installed;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Obstruction;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Support;
import org.lifeline.model.absorber.DeploymentForce;

/**
 * The search against brute force: every combination of temperature, side, mass, pretension and friction at many places
 * of every span, computed arrest by arrest with nothing of the search in it. The search must find at least what brute force
 * finds, to 0.1 %, and never more than is true.
 */
class EnvelopeBruteForceTest {
    private static final int LINES = 200;
    private static final int PLACES = Boolean.getBoolean("lifeline.long") ? 240 : 60;

    @Test
    void theSearchFindsWhatBruteForceFinds() {
        List<String> differences = new ArrayList<>();
        for (int seed = 1; seed <= LINES; seed++) {
            RandomDesigns random = new RandomDesigns(seed);
            LifelineDesign design = random.design();
            Tolerances tolerances = random.tolerances();
            EnvelopeResult found =
                    Envelope.withDefaults().withTolerances(tolerances).solve(design);
            Map<String, Double> worst = bruteForce(design, tolerances);
            Double failed = worst.remove("failed|0|");
            assertThat(failed)
                    .as("cases of seed %d that could not be computed", seed)
                    .isNull();
            assertThat(found.failures()).as("seed %d", seed).isEmpty();
            assertThat(worst).as("seed %d", seed).isNotEmpty();
            for (Map.Entry<String, Double> e : worst.entrySet()) {
                double value = value(found, e.getKey());
                double scale = Math.max(Math.abs(e.getValue()), scale(found, e.getKey()));
                if (!(value >= e.getValue() - 1e-3 * scale)) {
                    differences.add("seed " + seed + " " + e.getKey() + ": " + value + " < " + e.getValue());
                }
            }
        }
        assertThat(differences).isEmpty();
    }

    /** Where a value may be near zero it is measured against what it is a part of. */
    private static double scale(EnvelopeResult found, String key) {
        if (key.startsWith("load on")) {
            String id = key.substring("load on ".length(), key.indexOf('|'));
            return found.extremes().onSupport(id).orElseThrow().value();
        }
        return key.contains("MARGIN") || key.contains("ELEVATION") || key.startsWith("obstruction")
                ? found.extremes()
                        .of(Quantity.REQUIRED_BELOW_LINE)
                        .orElseThrow()
                        .value()
                // A small angle goes with the root of its drop, and is printed to 0.1°.
                : key.contains("SWING_ANGLE") ? 1 : key.contains("SWING") ? 0.1 : 0;
    }

    /** The value found, turned so that larger is worse. */
    private static double value(EnvelopeResult found, String key) {
        String[] part = key.split("\\|", 3);
        Extremes e = part[1].equals("0") ? found.extremes() : found.inSpan(Integer.parseInt(part[1]));
        Optional<Extreme> x;
        double sign = 1;
        if (part[0].startsWith("load on ")) {
            String id = part[0].substring("load on ".length());
            x = part[2].equals("force") ? e.onSupport(id) : e.onSupportToward(id, Direction.valueOf(part[2]));
        } else if (part[0].startsWith("obstruction ")) {
            x = e.overObstruction(Integer.parseInt(part[0].substring("obstruction ".length())));
            sign = -1;
        } else {
            Quantity q = Quantity.valueOf(part[0]);
            x = e.of(q);
            sign = q.largestIsWorst() ? 1 : -1;
        }
        return x.isEmpty() ? Double.NEGATIVE_INFINITY : sign * x.get().value();
    }

    private static Map<String, Double> bruteForce(LifelineDesign design, Tolerances tolerances) {
        Map<String, Double> worst = new HashMap<>();
        List<Double> none = List.of(Double.NaN);
        for (double p :
                tolerances.pretension().map(i -> List.of(i.low(), i.high())).orElse(none)) {
            for (double mu :
                    tolerances.friction().map(i -> List.of(i.low(), i.high())).orElse(none)) {
                Lifeline line = deviate(design.line(), p, mu);
                for (double mass :
                        tolerances.mass().map(i -> List.of(i.low(), i.high())).orElse(none)) {
                    for (Fall fall : falls(design)) {
                        Fall f = Double.isNaN(mass) ? fall : fall.withWorkers(w -> w.withMass(mass));
                        overPlaces(design, line, f, worst);
                    }
                }
            }
        }
        return worst;
    }

    private static List<Fall> falls(LifelineDesign design) {
        if (!design.falls().isEmpty()) {
            return design.falls();
        }
        return design.workers().stream()
                .map(w -> Fall.builder(w.id()).at(Place.of(1, 1)).faller(w).build())
                .toList();
    }

    private static Lifeline deviate(Lifeline line, double pretension, double friction) {
        Lifeline changed = line;
        if (!Double.isNaN(pretension)) {
            double t = Statics.withDefaults().solve(line, List.of()).firstTension();
            changed = line.withInstalled(Installed.pretension(pretension * t));
        }
        if (!Double.isNaN(friction)) {
            changed = changed.withSupports(
                    s -> s.passage().kind() == Passage.Kind.FRICTION ? s.withPassage(Passage.friction(friction)) : s);
        }
        return changed;
    }

    private static void overPlaces(LifelineDesign design, Lifeline line, Fall fall, Map<String, Double> worst) {
        for (double t : design.temperatures()) {
            for (DeploymentForce side : DeploymentForce.values()) {
                EnergyBalance analysis = EnergyBalance.withDefaults()
                        .withTemperature(t)
                        .withSide(side)
                        .withClearance(design.clearance());
                for (int span = 1; span <= line.spans(); span++) {
                    for (int i = 0; i <= PLACES; i++) {
                        double station = Math.min(line.run(span) - 1e-3, Math.max(1e-3, line.run(span) * i / PLACES));
                        try {
                            keep(design, analysis.solve(line, fall.at(Place.of(span, station))), worst);
                        } catch (NoEquilibriumException | InvalidInputException e) {
                            worst.merge("failed|0|", 1.0, Double::sum);
                        }
                    }
                }
            }
        }
    }

    private static void keep(LifelineDesign design, ArrestResult r, Map<String, Double> worst) {
        int span = r.fall().place().span();
        for (Quantity q : Quantity.values()) {
            double v = q.value(r, design.modelFactors()) * (q.largestIsWorst() ? 1 : -1);
            put(worst, q + "|0|", v);
            put(worst, q + "|" + span + "|", v);
        }
        double here = r.line().along(r.fall().place());
        Point first = r.line().supports().get(span - 1).position();
        double there = here - r.fall().place().station() + first.horizontalDistance(r.attachmentAtPeak());
        List<Obstruction> below = design.clearance().obstructions();
        for (int k = 0; k < below.size(); k++) {
            Obstruction o = below.get(k);
            if (o.from() <= Math.max(here, there) && o.to() >= Math.min(here, there)) {
                put(
                        worst,
                        "obstruction " + k + "|0|",
                        o.elevation() - Quantity.REQUIRED_ELEVATION.value(r, design.modelFactors()));
            }
        }
        for (int i = 0; i < r.supports().size(); i++) {
            Support s = r.line().supports().get(i);
            Vector3 v = r.supports().get(i).vector().times(design.modelFactors().force());
            put(worst, "load on " + s.id() + "|0|force", v.magnitude());
            for (Direction d : Direction.values()) {
                put(worst, "load on " + s.id() + "|0|" + d, d.component(v));
            }
        }
    }

    private static void put(Map<String, Double> worst, String key, double value) {
        if (!Double.isNaN(value)) {
            worst.merge(key, value, Math::max);
        }
    }
}
