package org.lifeline.analysis;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.analysis.state.AttachmentLimit;
import org.lifeline.analysis.warning.Warning;
import org.lifeline.base.Point;
import org.lifeline.model.Attachment;
import org.lifeline.model.Connection;
import org.lifeline.model.Connection.PersonalAbsorber;
import org.lifeline.model.Fall;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Place;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.Cable;
import org.lifeline.model.cable.LoadElongation;

/** What an arrest warns of, each brought about by one change of a line that gives no warning. */
class WarningsTest {
    private static final Cable STEEL = Cable.builder()
            .weightPerLength(4.2)
            .axialStiffness(4.9e6)
            .breakingStrength(79e3)
            .terminationEfficiency(0.8)
            .build();

    private static Lifeline line(Cable cable) {
        return Lifeline.builder()
                .cable(cable)
                .endAnchor("west", Point.of(0, 0, 6))
                .endAnchor("east", Point.of(12, 0, 6))
                .pretension(1500)
                .build();
    }

    private static Worker worker(Attachment attachment, double most) {
        return Worker.builder("w")
                .mass(100)
                .walkingLevel(4.5)
                .attachment(attachment)
                .connection(Connection.lanyard(
                        1.8,
                        PersonalAbsorber.builder()
                                .clearanceForce(4000)
                                .maximumForce(6000)
                                .maximumExtension(most)
                                .initialStiffness(1e5)
                                .stopStiffness(2e5)
                                .build()))
                .build();
    }

    private static ArrestResult solve(Lifeline line, double station, Worker worker) {
        return EnergyBalance.withDefaults()
                .solve(
                        line,
                        Fall.builder("f")
                                .at(Place.of(1, station))
                                .faller(worker)
                                .build());
    }

    private static Warning only(ArrestResult r, Warning.Code code) {
        List<Warning> list = r.warnings();
        assertThat(list).extracting(Warning::code).containsExactly(code);
        assertThat(list.get(0).value()).isGreaterThan(list.get(0).limit());
        assertThat(list.get(0).unit()).isNotEmpty();
        assertThat(list.get(0).toString()).startsWith(list.get(0).subject()).contains(code.text());
        return list.get(0);
    }

    @Test
    void aPlainArrestWarnsOfNothing() {
        assertThat(solve(line(STEEL), 6, worker(Attachment.GRIPPED, 1.2)).warnings())
                .isEmpty();
    }

    @Test
    void aCapacityThatIsExceeded() {
        Lifeline weak =
                line(STEEL).withSupports(s -> s.id().equals("east") ? s.withCapacity(10e3) : s.withCapacity(1e5));
        ArrestResult r = solve(weak, 6, worker(Attachment.GRIPPED, 1.2));
        Warning w = only(r, Warning.Code.ANCHOR_CAPACITY);
        assertThat(w.subject()).isEqualTo("east");
        assertThat(w.value()).isEqualTo(r.anchorLoad("east"));
        assertThat(w.limit()).isEqualTo(10e3);
    }

    @Test
    void aCableThatIsTooWeak() {
        Cable weak = Cable.builder()
                .weightPerLength(4.2)
                .axialStiffness(4.9e6)
                .breakingStrength(20e3)
                .terminationEfficiency(0.8)
                .build();
        Warning w = only(solve(line(weak), 6, worker(Attachment.GRIPPED, 1.2)), Warning.Code.CABLE_STRENGTH);
        assertThat(w.limit()).isEqualTo(16e3);
    }

    @Test
    void aCableThatIsTooSoftForItsStiffnessAlone() {
        Cable soft = Cable.builder().weightPerLength(4.2).axialStiffness(1e5).build();
        ArrestResult r = solve(line(soft), 6, worker(Attachment.GRIPPED, 1.2));
        Warning w = only(r, Warning.Code.CABLE_STRAIN);
        assertThat(w.value()).isEqualTo(r.maximumTension() / 1e5);
        assertThat(w.limit()).isEqualTo(0.05);
    }

    @Test
    void aCurveThatEndsBelowTheTension() {
        Cable rope = Cable.builder()
                .weightPerLength(4.2)
                .elongation(LoadElongation.curve(List.of(
                        new LoadElongation.Corner(0, 0),
                        new LoadElongation.Corner(0.005, 4e3),
                        new LoadElongation.Corner(0.008, 8e3))))
                .build();
        Warning w = only(solve(line(rope), 6, worker(Attachment.GRIPPED, 1.2)), Warning.Code.CABLE_CURVE);
        assertThat(w.limit()).isEqualTo(8e3);
    }

    @Test
    void anAbsorberThatIsUsedUp() {
        ArrestResult r = solve(line(STEEL), 6, worker(Attachment.GRIPPED, 0.1));
        assertThat(r.bottomedOut()).isTrue();
        Warning w = only(r, Warning.Code.BOTTOMED_OUT);
        assertThat(w.value()).isEqualTo(r.deployment());
        assertThat(w.limit()).isEqualTo(0.1);
    }

    @Test
    void anInLineAbsorberThatIsUsedUp() {
        Lifeline line = line(STEEL).withSupports(s -> s.id().equals("east") ? absorbing(s) : s);
        ArrestResult r = solve(line, 6, worker(Attachment.GRIPPED, 1.2));
        assertThat(r.warnings()).extracting(Warning::code).containsExactly(Warning.Code.INLINE_BOTTOMED_OUT);
        assertThat(r.warnings().get(0).subject()).isEqualTo("east");
    }

    private static Support absorbing(Support s) {
        return s.withInlineAbsorber(InlineAbsorber.of(LoadingCurve.through(
                List.of(new LoadingCurve.Corner(0, 3000), new LoadingCurve.Corner(0.05, 3000)), 5e6, 5e6)));
    }

    @Test
    void anAttachmentThatRunsFar() {
        Warning w = only(solve(line(STEEL), 3, worker(Attachment.FREE_RUNNING, 1.2)), Warning.Code.ATTACHMENT_RUNS);
        assertThat(w.subject()).isEqualTo("span 1");
        assertThat(w.value()).isBetween(2.5, 3.5);
        ArrestResult held = EnergyBalance.withDefaults()
                .withAttachmentLimit(AttachmentLimit.HELD)
                .solve(
                        line(STEEL),
                        Fall.builder("f")
                                .at(Place.of(1, 3))
                                .faller(worker(Attachment.FREE_RUNNING, 1.2))
                                .build());
        assertThat(held.warnings()).isEmpty();
    }

    @Test
    void unequalFallers() {
        Fall pair = Fall.builder("f")
                .at(Place.of(1, 6))
                .faller(worker(Attachment.GRIPPED, 1.2))
                .faller(worker(Attachment.GRIPPED, 1.2).toBuilder("v").mass(80).build())
                .build();
        Warning w = only(EnergyBalance.withDefaults().solve(line(STEEL), pair), Warning.Code.UNEQUAL_FALLERS);
        assertThat(w.value()).isEqualTo(1.25);
    }

    /** Whoever hangs has fallen: an in-line absorber is not new any more, and the result says which one. */
    @Test
    void anInlineAbsorberUnderThoseWhoHang() {
        Lifeline plain = line(STEEL);
        String last = plain.supports().get(plain.supports().size() - 1).id();
        Lifeline drawn = plain.withSupports(s -> s.id().equals(last)
                ? s.withInlineAbsorber(InlineAbsorber.of(LoadingCurve.through(
                        List.of(new LoadingCurve.Corner(0, 8000), new LoadingCurve.Corner(0.6, 8000)), 8e6, 2e5)))
                : s);
        Fall alone = Fall.builder("f")
                .at(Place.of(1, 6))
                .faller(worker(Attachment.GRIPPED, 1.2))
                .build();
        Fall second = Fall.builder("f")
                .at(Place.of(1, 6))
                .faller(worker(Attachment.GRIPPED, 1.2))
                .hanging(worker(Attachment.GRIPPED, 1.2).toBuilder("v").build(), Place.of(1, 4))
                .build();
        EnergyBalance analysis = EnergyBalance.withDefaults();
        assertThat(analysis.solve(drawn, second).warnings())
                .filteredOn(x -> x.code() == Warning.Code.INLINE_DRAWN_BEFORE)
                .extracting(Warning::subject)
                .containsExactly("in-line absorber at " + last);
        assertThat(analysis.solve(drawn, alone).warnings())
                .noneMatch(x -> x.code() == Warning.Code.INLINE_DRAWN_BEFORE);
        assertThat(analysis.solve(plain, second).warnings())
                .noneMatch(x -> x.code() == Warning.Code.INLINE_DRAWN_BEFORE);
    }
}
