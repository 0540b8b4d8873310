package org.lifeline.design.structure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Point;
import org.lifeline.base.Vector3;
import org.lifeline.model.Post;
import org.lifeline.model.Support;

/** Effects of a force on a support, by levers and Pythagoras. */
@SuppressWarnings("NullAway") // Null is handed over to be refused, and what is there is taken as there.
class LoadEffectTest {
    private static final Vector3 FORCE = new Vector3(3000, -4000, -12000);
    private static final double H = 1.2;

    private static Support support(Post post) {
        return Support.end("a", Point.of(0, 0, 12)).withPost(post);
    }

    private static Post.Builder post() {
        return Post.ofHeight(H);
    }

    @ParameterizedTest
    @CsvSource({
        "PLUS_X, 3000",
        "MINUS_X, -3000",
        "PLUS_Y, -4000",
        "MINUS_Y, 4000",
        "UP, -12000",
        "DOWN, 12000",
        "RESULTANT, 13000",
        "SHEAR, 5000",
        "BASE_MOMENT, 6000",
        "BASE_TORSION, 0"
    })
    void effectsOfAForceOfThreeFourTwelve(LoadEffect effect, double value) {
        // 3, 4, 12 → 13; 3, 4 → 5; 5000 N at 1.2 m → 6000 N·m.
        assertThat(effect.of(support(post().build()), FORCE)).isEqualTo(value, within(1e-9));
    }

    @ParameterizedTest
    @EnumSource(LoadEffect.class)
    void withoutAPostThereAreNoEffectsAtItsBase(LoadEffect effect) {
        Support bare = Support.end("a", Point.of(0, 0, 12));
        assertThat(Double.isNaN(effect.of(bare, FORCE))).isEqualTo(effect.needsBase());
    }

    @Test
    void theEffectsThatNeedABaseAreTheFourAtIt() {
        assertThat(LoadEffect.values())
                .filteredOn(LoadEffect::needsBase)
                .containsExactly(
                        LoadEffect.SHEAR, LoadEffect.BASE_MOMENT, LoadEffect.BASE_TORSION, LoadEffect.ELASTIC_SHARE);
        assertThat(LoadEffect.values()).extracting(LoadEffect::words).doesNotHaveDuplicates();
        assertThat(LoadEffect.values())
                .filteredOn(e -> e.unit().equals("N·m"))
                .containsExactly(LoadEffect.BASE_MOMENT, LoadEffect.BASE_TORSION);
        assertThat(LoadEffect.values()).filteredOn(e -> e.unit().equals("-")).containsExactly(LoadEffect.ELASTIC_SHARE);
        assertThat(LoadEffect.SHEAR.unit()).isEqualTo("N");
    }

    /** By levers: M_x = y F_z − h F_y, M_y = h F_x − x F_z, M_z = x F_y − y F_x. */
    @Test
    void theMomentIsForceTimesLever() {
        SplittableRandom random = new SplittableRandom(2);
        for (int i = 0; i < 200; i++) {
            double h = random.nextDouble(0.2, 3);
            double x = random.nextDouble(-0.5, 0.5);
            double y = random.nextDouble(-0.5, 0.5);
            Vector3 f = new Vector3(
                    random.nextDouble(-2e4, 2e4), random.nextDouble(-2e4, 2e4), random.nextDouble(-2e4, 2e4));
            Post p = Post.ofHeight(h).eccentricity(new Post.Eccentricity(x, y)).build();
            Vector3 m = LoadEffect.moment(p, f);
            assertThat(m.x()).isEqualTo(y * f.z() - h * f.y(), within(1e-9));
            assertThat(m.y()).isEqualTo(h * f.x() - x * f.z(), within(1e-9));
            assertThat(m.z()).isEqualTo(x * f.y() - y * f.x(), within(1e-9));
            assertThat(LoadEffect.BASE_MOMENT.of(support(p), f)).isEqualTo(Math.hypot(m.x(), m.y()), within(1e-9));
            assertThat(LoadEffect.BASE_TORSION.of(support(p), f)).isEqualTo(Math.abs(m.z()), within(1e-9));
            // A moment does no work on its own lever, and none on its force.
            assertThat(m.dot(f) / (m.magnitude() * f.magnitude())).isEqualTo(0, within(1e-12));
        }
    }

    @Test
    void anUprightPullInTheAxisOfAPostBendsNothing() {
        Support s = support(post().build());
        Vector3 down = new Vector3(0, 0, -9000);
        assertThat(LoadEffect.BASE_MOMENT.of(s, down)).isZero();
        assertThat(LoadEffect.SHEAR.of(s, down)).isZero();
        // Beside the axis it does: 9000 N · 0.25 m.
        Support bracket =
                support(post().eccentricity(new Post.Eccentricity(0, 0.25)).build());
        assertThat(LoadEffect.BASE_MOMENT.of(bracket, down)).isEqualTo(2250, within(1e-9));
    }

    /** 3000 N · 1.2 m about y against 7200 N·m, 4000 N · 1.2 m about x against 9600 N·m: one half each, one in all. */
    @Test
    void sharesOfBothDirectionsAreAdded() {
        Support both = support(
                post().momentOfResistanceX(7200).momentOfResistanceY(9600).build());
        assertThat(LoadEffect.ELASTIC_SHARE.of(both, FORCE)).isEqualTo(1, within(1e-12));
        assertThat(LoadEffect.ELASTIC_SHARE.of(both, FORCE.times(-1))).isEqualTo(1, within(1e-12));
    }

    @Test
    void onlyDirectionsWithAResistanceCount() {
        Support alongX = support(post().momentOfResistanceX(7200).build());
        Support alongY = support(post().momentOfResistanceY(4800).build());
        assertThat(LoadEffect.ELASTIC_SHARE.of(alongX, FORCE)).isEqualTo(0.5, within(1e-12));
        assertThat(LoadEffect.ELASTIC_SHARE.of(alongY, FORCE)).isEqualTo(1, within(1e-12));
        assertThat(LoadEffect.ELASTIC_SHARE.of(support(post().build()), FORCE)).isNaN();
    }

    @Test
    void oppositeDirectionsAreOfOppositeSign() {
        Support s = support(post().build());
        LoadEffect[][] pairs = {
            {LoadEffect.PLUS_X, LoadEffect.MINUS_X},
            {LoadEffect.PLUS_Y, LoadEffect.MINUS_Y},
            {LoadEffect.UP, LoadEffect.DOWN}
        };
        for (LoadEffect[] pair : pairs) {
            assertThat(pair[0].of(s, FORCE)).isEqualTo(-pair[1].of(s, FORCE));
            assertThat(pair[0].of(s, FORCE)).isEqualTo(pair[1].of(s, FORCE.times(-1)));
        }
    }

    @Test
    void whatIsMissingIsNamed() {
        assertThatThrownBy(() -> LoadEffect.UP.of(null, FORCE))
                .isInstanceOf(InvalidInputException.class)
                .hasMessage("support: null: must be given");
        assertThatThrownBy(() -> LoadEffect.UP.of(support(post().build()), null))
                .hasMessage("force: null: must be given");
        assertThatThrownBy(() -> LoadEffect.moment(null, FORCE)).hasMessage("post: null: must be given");
        assertThatThrownBy(() -> LoadEffect.moment(post().build(), null)).hasMessage("force: null: must be given");
    }

    // Factors.

    @ParameterizedTest
    @CsvSource({"1e-12", "1", "10"})
    void factorsUpToTenAreTaken(double factor) {
        assertThat(new StatedFactor("ultimate", factor, "brief").factor()).isEqualTo(factor);
    }

    @ParameterizedTest
    @CsvSource({"0", "-1", "10.000001", "NaN", "Infinity"})
    void otherFactorsAreRefused(double factor) {
        assertThatThrownBy(() -> new StatedFactor("ultimate", factor, "brief"))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageStartingWith("factor: ")
                .hasMessageEndingWith("must be above zero and at most 10");
    }

    @Test
    void aFactorHasANameAndASource() {
        assertThatThrownBy(() -> new StatedFactor(" ", 1.5, ""))
                .hasMessage(
                        "name: \" \": must not be blank; source: \"\": must not be blank: a factor without source is"
                                + " nobody's");
        assertThatThrownBy(() -> new StatedFactor(null, 1.5, "brief")).hasMessage("name: null: must be given");
        assertThatThrownBy(() -> new StatedFactor("ultimate", 1.5, null)).hasMessage("source: null: must be given");
    }

    @ParameterizedTest
    @CsvSource({"-1e-9", "1.3962635", "NaN"})
    void aPullFlatterThanEightyDegreesIsNoFall(double angle) {
        assertThatThrownBy(() -> SupportLoads.withDefaults().withAngle(angle))
                .isInstanceOf(InvalidInputException.class)
                .hasMessageStartingWith("pullAngle: ")
                .hasMessageEndingWith("must lie from 0 to 80°");
    }
}
