package org.lifeline.analysis;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.state.AttachmentLimit;
import org.lifeline.base.Point;
import org.lifeline.model.Attachment;
import org.lifeline.model.Fall;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.DeploymentForce;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.testing.PlainParts;

/**
 * One analysis that keeps the line before the fall gives every digit that an analysis of its own gives, in whichever order
 * falls, sides, limits, temperatures and lines come, and from several threads at once.
 */
class LineBeforeFallTest {
    private static Lifeline line(double pretension) {
        return Lifeline.builder()
                .cable(PlainParts.cable(0.576, 4.9e6))
                .support(Support.end("a", Point.of(0, 0, 10))
                        .withInlineAbsorber(InlineAbsorber.of(LoadingCurve.through(
                                List.of(new LoadingCurve.Corner(0, 9000), new LoadingCurve.Corner(0.8, 9500)),
                                1e5,
                                1e6))))
                .support(Support.intermediate("p", Point.of(11, 0, 10), Passage.friction(0.12)))
                .support(Support.intermediate("q", Point.of(21, 1, 10.3), Passage.friction(0.12)))
                .support(Support.end("b", Point.of(33, 2, 10)))
                .pretension(pretension)
                .build();
    }

    private static Worker worker(String id, double mass, Attachment attachment) {
        return Worker.builder(id)
                .mass(mass)
                .walkingLevel(8.5)
                .attachment(attachment)
                .connection(PlainParts.lanyard(3200, 6000, 1.2))
                .build();
    }

    /** Falls that differ in place, in who falls and in who hangs: more sets of those than are kept. */
    private static List<Fall> falls() {
        List<Fall> list = new ArrayList<>();
        for (int hanging = 0; hanging < 6; hanging++) {
            for (double station : new double[] {0.4, 5}) {
                Fall.Builder b = Fall.builder("f" + hanging + " " + station)
                        .at(Place.of(1 + hanging % 3, station))
                        .faller(worker("w", 100, Attachment.FREE_RUNNING));
                if (hanging % 2 == 1) {
                    b.faller(worker("v", 70, Attachment.FREE_RUNNING));
                }
                for (int h = 0; h < hanging; h++) {
                    b.hanging(worker("h" + h, 80, Attachment.GRIPPED), Place.of(1 + h % 3, 6.5 + (h < 3 ? 0 : 1)));
                }
                list.add(b.build());
            }
        }
        return list;
    }

    private static String form(EnergyBalance analysis, Lifeline line, Fall fall) {
        ArrestResult held = analysis.withAttachmentLimit(AttachmentLimit.HELD).solve(line, fall);
        return analysis.solve(line, fall).canonicalForm() + "\n" + held.canonicalForm();
    }

    @Test
    void noDigitDependsOnWhatWasSolvedBefore() {
        List<Lifeline> lines = List.of(line(1500), line(2500), line(1500));
        EnergyBalance cold = EnergyBalance.withDefaults().withTemperature(-20);
        EnergyBalance coldClearance = cold.withSide(DeploymentForce.CLEARANCE);
        EnergyBalance hot = cold.withTemperature(40);
        for (Fall fall : falls()) {
            for (Lifeline line : lines) {
                for (EnergyBalance kept : List.of(cold, coldClearance, hot)) {
                    EnergyBalance fresh = EnergyBalance.withDefaults()
                            .withTemperature(kept == hot ? 40 : -20)
                            .withSide(kept == coldClearance ? DeploymentForce.CLEARANCE : DeploymentForce.MAXIMUM);
                    assertThat(form(kept, line, fall))
                            .as("%s, pretension %s", fall.id(), line.installed())
                            .isEqualTo(form(fresh, line, fall));
                }
            }
        }
    }

    /** The line before the fall is one object for falls that share it. */
    @Test
    void theStateBeforeTheFallIsShared() {
        EnergyBalance analysis = EnergyBalance.withDefaults();
        Lifeline line = line(1500);
        Fall fall = falls().get(4);
        ArrestResult one = analysis.solve(line, fall);
        ArrestResult other = analysis.withSide(DeploymentForce.CLEARANCE).solve(line, fall.at(Place.of(2, 3)));
        assertThat(other.before()).isSameAs(one.before());
        assertThat(analysis.withTemperature(0).solve(line, fall).before()).isNotSameAs(one.before());
        assertThat(analysis.solve(line(1500), fall).before()).isNotSameAs(one.before());
        assertThat(analysis.solve(line, falls().get(6)).before()).isNotSameAs(one.before());
    }

    @Test
    void severalThreadsMayUseOneAnalysis() {
        Lifeline line = line(1500);
        List<Fall> falls = falls();
        EnergyBalance shared = EnergyBalance.withDefaults();
        List<String> together = IntStream.range(0, 3 * falls.size())
                .parallel()
                .mapToObj(i -> form(shared, line, falls.get(i % falls.size())))
                .toList();
        for (int i = 0; i < together.size(); i++) {
            assertThat(together.get(i))
                    .isEqualTo(form(EnergyBalance.withDefaults(), line, falls.get(i % falls.size())));
        }
    }
}
