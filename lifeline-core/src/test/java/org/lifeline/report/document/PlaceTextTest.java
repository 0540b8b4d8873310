package org.lifeline.report.document;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lifeline.model.Place;
import org.lifeline.model.absorber.DeploymentForce;

/** Places and cases in words. */
class PlaceTextTest {
    private static final Quantities SI = Quantities.in(UnitChoice.SI);
    private static final Quantities BOTH = Quantities.in(UnitChoice.BOTH);

    @Test
    void aPlaceInASpan() {
        Place place = Place.of(2, 6);
        assertThat(PlaceText.asInput(place, SI)).isEqualTo("in span 2 at 6 m");
        assertThat(PlaceText.asResult(place, SI)).isEqualTo("span 2 at 6.000 m");
        assertThat(PlaceText.asInput(place, BOTH)).isEqualTo("in span 2 at 6 m (19.68504 ft)");
        assertThat(PlaceText.span(place)).isEqualTo("2");
        assertThat(PlaceText.station(place, "6.000")).isEqualTo("6.000");
    }

    @Test
    void aPlaceAtASupport() {
        Place place = Place.atSupport("post 1");
        assertThat(PlaceText.asInput(place, SI)).isEqualTo("at post 1");
        assertThat(PlaceText.asResult(place, SI)).isEqualTo("at post 1");
        assertThat(PlaceText.span(place)).isEqualTo("–");
        assertThat(PlaceText.station(place, "0.000")).isEqualTo("at post 1");
    }

    @Test
    void theNameOfASupportIsInert() {
        Place place = Place.atSupport("post\u202e 1");
        assertThat(PlaceText.asInput(place, SI)).isEqualTo("at post⟨U+202E⟩ 1");
        assertThat(PlaceText.station(place, "")).doesNotContain("\u202e");
    }

    @Test
    void sidesAndLists() {
        assertThat(CaseNames.side(DeploymentForce.CLEARANCE)).isEqualTo("clearance deployment force");
        assertThat(CaseNames.shortSide(DeploymentForce.MAXIMUM)).isEqualTo("maximum");
        assertThat(CaseNames.capital("anchor load")).isEqualTo("Anchor load");
        assertThat(CaseNames.capital("A")).isEqualTo("A");
        assertThat(CaseNames.list(List.of(1))).isEqualTo("arrest 1");
        assertThat(CaseNames.list(List.of(1, 4, 7))).isEqualTo("arrests 1, 4, 7");
    }
}
