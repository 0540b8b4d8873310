package org.lifeline.examples.programs;

import static org.lifeline.base.Units.kN;
import static org.lifeline.base.Units.kNPerMetre;
import static org.lifeline.base.Units.meganewtons;

import java.util.List;
import java.util.Locale;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.EnergyBalance;
import org.lifeline.analysis.state.SupportReaction;
import org.lifeline.base.Point;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;

/** Five spans with friction at the posts and an in-line energy absorber at one end. */
public final class FiveSpans {
    private FiveSpans() {}

    /**
     * Prints what every anchor gets, and what the absorber does.
     *
     * @param args none
     */
    public static void main(String[] args) {
        LoadingCurve tearing = LoadingCurve.through(
                List.of(new LoadingCurve.Corner(0, kN(8)), new LoadingCurve.Corner(0.8, kN(8))),
                kNPerMetre(8000),
                kNPerMetre(220));
        Lifeline.Builder builder = Lifeline.builder()
                .cable(Cable.builder()
                        .massPerLength(0.58)
                        .axialStiffness(meganewtons(4.9))
                        .build())
                .endAnchor("abutment", Point.of(0, 0, 9));
        for (int i = 1; i <= 4; i++) {
            builder.intermediateAnchor("post " + i, Point.of(9.0 * i, 0, 9), Passage.friction(0.1));
        }
        Lifeline line = builder.support(
                        Support.end("crane rail", Point.of(45, 0, 9)).withInlineAbsorber(InlineAbsorber.of(tearing)))
                .pretension(kN(2))
                .build();
        Worker worker = Worker.builder("fitter")
                .mass(110)
                .walkingLevel(7.6)
                .connection(Connection.lanyard(
                        1.8,
                        Connection.PersonalAbsorber.builder()
                                .clearanceForce(kN(3.5))
                                .maximumForce(kN(6))
                                .maximumExtension(1.2)
                                .initialStiffness(kNPerMetre(100))
                                .build()))
                .build();
        Fall fall = Fall.builder("span 2").at(Place.of(2, 4.5)).faller(worker).build();
        ArrestResult r = EnergyBalance.withDefaults().solve(line, fall);
        for (int i = 0; i < r.supports().size(); i++) {
            SupportReaction s = r.supports().get(i);
            System.out.printf(
                    Locale.ROOT,
                    "%-10s  %5.2f kN, %5.1f° below the horizontal, cable passed %5.1f mm%n",
                    s.id(),
                    s.force() / 1000,
                    Math.toDegrees(s.angleBelowHorizontal()),
                    1000 * r.slip(i));
        }
        r.inlineAbsorbers()
                .forEach(a -> System.out.printf(
                        Locale.ROOT, "in-line absorber extends %.2f m, %.2f m left%n", a.extension(), a.remaining()));
        System.out.printf(
                Locale.ROOT,
                "of %.0f J the line took %.0f J, friction %.0f J of them, the in-line absorber %.0f J%n",
                r.energy().fall(),
                r.energy().lineWork(),
                r.energy().friction(),
                r.energy().inlineAbsorbers());
    }
}
