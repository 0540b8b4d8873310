package org.lifeline.examples.programs;

import static org.lifeline.base.Units.kN;
import static org.lifeline.base.Units.kNPerMetre;
import static org.lifeline.base.Units.meganewtons;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.base.Point;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.cable.Cable;

/**
 * A host program of a firm: it has its own threads, its own progress, its own table, and knows nothing of the library but
 * its public interface. Models, analyses and results are immutable, so threads share them freely.
 */
public final class EmbeddingHost {
    private EmbeddingHost() {}

    /** A case of the host's own table. */
    private record Case(String name, Place place, double pretension) {}

    /**
     * Runs all cases on the host's threads and prints the table in the order of the cases.
     *
     * @param args none
     * @throws InterruptedException if the host is stopped
     */
    public static void main(String[] args) throws InterruptedException {
        List<Case> cases = new ArrayList<>();
        for (double pretension : new double[] {0.5, 1, 2, 4}) {
            cases.add(new Case("span 1 at " + pretension + " kN", Place.of(1, 4.5), kN(pretension)));
            cases.add(new Case("span 2 at " + pretension + " kN", Place.of(2, 6), kN(pretension)));
        }
        // A slip of the pen: the station lies beyond the span. One bad case must not stop the table.
        cases.add(new Case("span 1 beyond its end", Place.of(1, 45), kN(1)));

        AtomicInteger done = new AtomicInteger();
        ExecutorService threads = Executors.newFixedThreadPool(2);
        List<Future<String>> rows = new ArrayList<>();
        try {
            for (Case each : cases) {
                rows.add(threads.submit(() -> {
                    String row = row(each);
                    done.incrementAndGet();
                    return row;
                }));
            }
            for (Future<String> row : rows) {
                System.out.println(row.get());
            }
            System.out.println(done.get() + " of " + cases.size() + " cases done");
        } catch (ExecutionException e) {
            throw new IllegalStateException("a case failed with something else than a typed exception", e);
        } finally {
            threads.shutdown();
        }
    }

    private static String row(Case each) {
        try {
            ArrestResult r = EnergyBalance.withDefaults().solve(line(each.pretension()), fall(each.place()));
            return String.format(
                    Locale.ROOT,
                    "%-22s  end anchor %5.2f kN  post %5.2f kN  below the line %.2f m",
                    each.name(),
                    r.endAnchorLoad() / 1000,
                    r.anchorLoad("post") / 1000,
                    r.clearance().requiredBelowLine());
        } catch (InvalidInputException e) {
            return String.format(
                    Locale.ROOT,
                    "%-22s  refused: %s",
                    each.name(),
                    e.violations().get(0));
        } catch (NoEquilibriumException e) {
            return String.format(Locale.ROOT, "%-22s  no equilibrium: %s", each.name(), e.where());
        }
    }

    private static Lifeline line(double pretension) {
        return Lifeline.builder()
                .cable(Cable.builder()
                        .massPerLength(0.41)
                        .axialStiffness(meganewtons(3.3))
                        .build())
                .endAnchor("north", Point.of(0, 0, 7))
                .intermediateAnchor("post", Point.of(9, 0, 7), Passage.friction(0.1))
                .endAnchor("south", Point.of(21, 0, 7))
                .pretension(pretension)
                .build();
    }

    private static Fall fall(Place place) {
        Worker worker = Worker.builder("worker")
                .mass(100)
                .walkingLevel(5.5)
                .connection(Connection.lanyard(
                        1.5,
                        Connection.PersonalAbsorber.builder()
                                .clearanceForce(kN(3.2))
                                .maximumForce(kN(6))
                                .maximumExtension(1.2)
                                .initialStiffness(kNPerMetre(100))
                                .build()))
                .build();
        return Fall.builder("fall").at(place).faller(worker).build();
    }
}
