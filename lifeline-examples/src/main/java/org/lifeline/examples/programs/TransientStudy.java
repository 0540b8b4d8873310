package org.lifeline.examples.programs;

import static org.lifeline.base.Units.kN;
import static org.lifeline.base.Units.kNPerMetre;
import static org.lifeline.base.Units.meganewtons;

import java.util.Locale;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.TransientArrest;
import org.lifeline.analysis.TransientResult;
import org.lifeline.base.Point;
import org.lifeline.model.Attachment;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.Installed;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;

/**
 * What the energy balance cannot see: a fall in the middle of spans of several lengths, followed in time beside the energy
 * balance, with an absorber and without.
 */
public final class TransientStudy {
    private TransientStudy() {}

    /**
     * Prints a table with an absorber and one without.
     *
     * @param args none are used
     */
    public static void main(String[] args) {
        print(
                "With an absorber of 6 kN",
                Connection.lanyard(
                        1.5,
                        Connection.PersonalAbsorber.builder()
                                .clearanceForce(kN(3.2))
                                .maximumForce(kN(6))
                                .maximumExtension(1.2)
                                .initialStiffness(kNPerMetre(100))
                                .build()));
        System.out.println();
        print("Without an absorber", Connection.plainLanyard(1.5, LoadingCurve.spring(kNPerMetre(60))));
    }

    private static void print(String title, Connection connection) {
        System.out.println(title + ": in time / by energy balance; peak of the tension in time after the catch");
        System.out.println("span [m]   arrest force [kN]   tension [kN]      total fall [m]  peak after [ms]");
        for (double span : new double[] {6, 12, 20, 32}) {
            TransientResult r = fall(span, connection);
            ArrestResult motion = r.arrest();
            ArrestResult balance = r.energyBalance().orElseThrow();
            double catchTime =
                    Math.sqrt(2 * motion.freeFall() / r.arrest().line().gravity());
            System.out.println(String.format(
                    Locale.ROOT,
                    "%8.0f   %8.2f / %-8.2f %7.1f / %-7.1f %7.2f / %-7.2f %9.0f",
                    span,
                    motion.arrestForce() / 1000,
                    balance.arrestForce() / 1000,
                    motion.maximumTension() / 1000,
                    balance.maximumTension() / 1000,
                    motion.totalFallDistance(),
                    balance.totalFallDistance(),
                    1000 * (r.firstCatch().tension().time() - catchTime)));
        }
    }

    /** A span installed with a sag of 1 %, the fall in its middle. */
    private static TransientResult fall(double span, Connection connection) {
        Lifeline line = Lifeline.builder()
                .cable(Cable.builder()
                        .massPerLength(0.41)
                        .axialStiffness(meganewtons(3.3))
                        .dampingTime(5e-4)
                        .build())
                .endAnchor("left", Point.of(0, 0, 11.5))
                .endAnchor("right", Point.of(span, 0, 11.5))
                .installed(Installed.initialSag(1, 0.01 * span))
                .build();
        Worker worker = Worker.builder("worker")
                .mass(100)
                .walkingLevel(10)
                .attachment(Attachment.GRIPPED)
                .connection(connection)
                .build();
        Fall fall =
                Fall.builder("middle").at(Place.of(1, span / 2)).faller(worker).build();
        return TransientArrest.withDefaults().withDuration(1.5).solve(line, fall);
    }
}
