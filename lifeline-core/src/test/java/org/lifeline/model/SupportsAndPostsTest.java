package org.lifeline.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.lifeline.model.ModelParts.SPRING;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lifeline.base.PlausibleRange;
import org.lifeline.base.Point;
import org.lifeline.base.Refusal;

/** Supports, their stiffness and passage, and the posts that they stand on. */
@SuppressWarnings("NullAway") // Null is handed over to be refused, and what is there is taken as there.
class SupportsAndPostsTest {
    private static final Point HERE = Point.of(1, 2, 3);
    private static final double STEEL = 2.1e11;

    private static Support end() {
        return Support.end("a", HERE);
    }

    private static Support middle() {
        return Support.intermediate("m", HERE, Passage.friction(0.1));
    }

    /** Cantilever: k = 3 E I/h³ (Euler and Bernoulli, recalled). 1840 cm⁴ and 1.2 m of steel: 6.708 MN/m. */
    @Test
    void aPostBendsLikeACantilever() {
        Stiffness k = Post.ofHeight(1.2)
                .elasticModulus(STEEL)
                .secondMomentX(1840e-8)
                .secondMomentY(613e-8)
                .build()
                .stiffness();
        assertThat(k.x()).isCloseTo(3 * STEEL * 1840e-8 / 1.728, within(1e-8));
        assertThat(k.x()).isCloseTo(6.708e6, within(5e2));
        assertThat(k.y()).isCloseTo(k.x() * 613 / 1840, within(1e-8));
        assertThat(k.z()).as("along its axis").isInfinite();
    }

    /** Half as high is eight times as stiff; twice the modulus or the second moment is twice as stiff. */
    @Test
    void stiffnessOfAPostByProportion() {
        double k = post(2, STEEL, 1e-5).stiffness().x();
        assertThat(post(1, STEEL, 1e-5).stiffness().x()).isCloseTo(8 * k, within(1e-8));
        assertThat(post(2, 2 * STEEL, 1e-5).stiffness().x()).isCloseTo(2 * k, within(1e-8));
        assertThat(post(2, STEEL, 2e-5).stiffness().x()).isCloseTo(2 * k, within(1e-8));
        assertThat(post(2, STEEL, 1e-5).stiffness().y())
                .as("no second moment given")
                .isInfinite();
    }

    private static Post post(double height, double modulus, double secondMoment) {
        return Post.ofHeight(height)
                .elasticModulus(modulus)
                .secondMomentX(secondMoment)
                .build();
    }

    @Test
    void aPostWithoutASectionIsRigidAndSaysSo() {
        Post p = Post.ofHeight(1.1).build();
        assertThat(p.hasSection()).isFalse();
        assertThat(p.stiffness().isRigid()).isTrue();
        assertThat(p.elasticModulus()).isEmpty();
        assertThat(p.secondMomentX()).isEmpty();
        assertThat(p.secondMomentY()).isEmpty();
        assertThat(p.momentOfResistanceX()).isEmpty();
        assertThat(p.momentOfResistanceY()).isEmpty();
        assertThat(p.eccentricity()).isEqualTo(new Post.Eccentricity(0, 0));
        assertThat(p).hasToString("post of 1.1 m");
    }

    @Test
    void everythingGivenOfAPostComesBack() {
        Post p = Post.ofHeight(1.1)
                .eccentricity(new Post.Eccentricity(0.05, -0.02))
                .elasticModulus(STEEL)
                .secondMomentX(1e-5)
                .secondMomentY(2e-5)
                .momentOfResistanceX(3e4)
                .momentOfResistanceY(4e4)
                .build();
        assertThat(p.height()).isEqualTo(1.1);
        assertThat(p.eccentricity().y()).isEqualTo(-0.02);
        assertThat(p.elasticModulus()).hasValue(STEEL);
        assertThat(p.secondMomentX()).hasValue(1e-5);
        assertThat(p.secondMomentY()).hasValue(2e-5);
        assertThat(p.momentOfResistanceX()).hasValue(3e4);
        assertThat(p.momentOfResistanceY()).hasValue(4e4);
        assertThat(p)
                .hasToString(
                        "post of 1.1 m, E 2.1E11 Pa, I 1.0E-5, 2.0E-5 m⁴, M 30000.0, 40000.0 N·m, off axis 0.05, -0.02"
                                + " m");
        Support s = end().withPost(p);
        assertThat(s.canonicalForm().toString())
                .contains(
                        "post.height: 1.1 m",
                        "post.eccentricity.x: 0.05 m",
                        "post.eccentricity.y: -0.02 m",
                        "post.elasticModulus: 2.1E11 Pa",
                        "post.secondMomentX: 1.0E-5 m⁴",
                        "post.secondMomentY: 2.0E-5 m⁴",
                        "post.momentOfResistanceX: 30000.0 N·m",
                        "post.momentOfResistanceY: 40000.0 N·m");
    }

    @Test
    void aSectionNeedsModulusAndSecondMoment() {
        assertThat(Refusal.of(() -> Post.ofHeight(1).elasticModulus(STEEL).build()))
                .containsExactly("secondMomentOfArea: missing: must be given where a modulus of elasticity is");
        assertThat(Refusal.of(() -> Post.ofHeight(1).secondMomentX(1e-5).build()))
                .containsExactly("elasticModulus: missing: must be given where a second moment of area is");
        assertThat(Refusal.of(() -> Post.ofHeight(1).secondMomentY(1e-5).build()))
                .containsExactly("elasticModulus: missing: must be given where a second moment of area is");
        assertThat(Refusal.of(() -> Post.ofHeight(1)
                        .elasticModulus(STEEL)
                        .secondMomentY(1e-5)
                        .build()))
                .isEmpty();
        assertThat(Refusal.of(() -> Post.ofHeight(1).momentOfResistanceX(1e4).build()))
                .as("resistance without a section")
                .isEmpty();
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -1, Double.NaN, Double.POSITIVE_INFINITY, 1000.1})
    void aPostHasAHeight(double height) {
        assertThat(Refusal.paths(() -> Post.ofHeight(height).build())).containsExactly("height");
    }

    /** 3 E I/h³ grows without bound as a post gets shorter: the section is named, since it can be left out where it is rigid. */
    @Test
    void aSectionWhoseStiffnessIsNotComputedIsRefusedAtItsField() {
        double most = PlausibleRange.STIFFNESS.highest();
        double height = 0.01;
        double section = most * height * height * height / (3 * STEEL);
        assertThat(post(height, STEEL, 0.999 * section).stiffness().x()).isBetween(0.99 * most, most);
        assertThat(Refusal.of(() -> Post.ofHeight(height)
                        .elasticModulus(STEEL)
                        .secondMomentX(1e-5)
                        .secondMomentY(1.001 * section)
                        .build()))
                .singleElement()
                .asString()
                .startsWith("secondMomentOfArea.y: ")
                .contains("0.01 m", "to 1.0E15 N/m", "leave it out where the post is rigid");
        assertThat(Refusal.paths(() -> Post.ofHeight(1000)
                        .elasticModulus(1e6)
                        .secondMomentX(1e-13)
                        .secondMomentY(1e-13)
                        .build()))
                .containsExactly("secondMomentOfArea.x", "secondMomentOfArea.y");
    }

    @Test
    void everyNumberOfAPostIsRefusedByItsName() {
        assertThat(Refusal.paths(() -> Post.ofHeight(1)
                        .elasticModulus(0)
                        .secondMomentX(11)
                        .secondMomentY(1e-14)
                        .momentOfResistanceX(-1)
                        .momentOfResistanceY(1.1e9)
                        .build()))
                .containsExactly(
                        "elasticModulus",
                        "secondMomentOfArea.x",
                        "secondMomentOfArea.y",
                        "momentOfResistance.x",
                        "momentOfResistance.y");
        assertThat(Refusal.paths(() -> new Post.Eccentricity(Double.NaN, 2e6))).containsExactly("x", "y");
        assertThat(Refusal.paths(() -> Post.ofHeight(1).eccentricity(null))).containsExactly("eccentricity");
    }

    @Test
    void aPostWithASectionGivesItsStiffnessAndOneWithoutLeavesIt() {
        Support soft = end().withStiffness(Stiffness.alongX(1e5));
        assertThat(soft.withPost(Post.ofHeight(1).build()).stiffness()).isEqualTo(Stiffness.alongX(1e5));
        Post p = post(2, STEEL, 1e-5);
        assertThat(soft.withPost(p).stiffness()).isEqualTo(p.stiffness());
        assertThat(soft.withPost(p).post()).contains(p);
        assertThat(soft.withPost(p).withStiffness(Stiffness.rigid()).post()).contains(p);
    }

    @Test
    void changedCopiesOfASupportKeepAllElse() {
        Post p = Post.ofHeight(1).build();
        InlineAbsorber absorber = InlineAbsorber.of(SPRING);
        Support s =
                end().withCapacity(2e4).withInlineAbsorber(absorber).withPost(p).withStiffness(Stiffness.alongX(1e5));
        Support moved = s.withPosition(Point.of(4, 5, 6));
        assertThat(moved.position()).isEqualTo(Point.of(4, 5, 6));
        assertThat(moved.capacity()).hasValue(2e4);
        assertThat(moved.inlineAbsorber()).contains(absorber);
        assertThat(moved.post()).contains(p);
        assertThat(moved.stiffness()).isEqualTo(Stiffness.alongX(1e5));
        assertThat(moved.withPosition(HERE)).isEqualTo(s).hasSameHashCodeAs(s);
        assertThat(s.withCapacity(3e4).post()).contains(p);
        assertThat(middle().withCapacity(1e4).withPassage(Passage.clamped()).capacity())
                .hasValue(1e4);
        assertThat(middle().withPassage(Passage.free()).position()).isEqualTo(HERE);
    }

    @Test
    void supportsArePrintedWithWhatTheyCarry() {
        assertThat(end()).hasToString("end anchor a at Point[x=1.0, y=2.0, z=3.0]");
        assertThat(middle()).hasToString("intermediate anchor m at Point[x=1.0, y=2.0, z=3.0], friction 0.1");
        assertThat(end().withStiffness(Stiffness.alongX(1e5))
                        .withInlineAbsorber(InlineAbsorber.of(SPRING))
                        .withCapacity(2e4)
                        .withPost(Post.ofHeight(1).build()))
                .hasToString(
                        "end anchor a at Point[x=1.0, y=2.0, z=3.0], Stiffness[x=100000.0, y=Infinity, z=Infinity],"
                                + " in-line absorber: [0.0] N at [0.0] m, then 50000.0 N/m, capacity 20000.0 N, post of 1.0 m");
    }

    @Test
    void theFormOfASupport() {
        assertThat(middle().withCapacity(2e4).canonicalForm())
                .hasToString(
                        "support\nid: m\ntype: intermediate\nposition.x: 1.0 m\nposition.y: 2.0 m\nposition.z: 3.0 m"
                                + "\npassage: FRICTION\npassage.friction: 0.1\nstiffness.x: Infinity N/m\nstiffness.y: Infinity N/m"
                                + "\nstiffness.z: Infinity N/m\ncapacity: 20000.0 N");
        assertThat(end().withInlineAbsorber(InlineAbsorber.of(SPRING))
                        .canonicalForm()
                        .toString())
                .contains("type: end\n", "passage: CLAMPED\n", "inlineAbsorber[0].force: 0.0 N\n")
                .doesNotContain("passage.friction", "capacity");
    }

    @Test
    void whatDoesNotFitASupportIsRefused() {
        assertThat(Refusal.of(() -> middle().withInlineAbsorber(InlineAbsorber.of(SPRING))))
                .containsExactly("inlineAbsorber: given: only an end anchor can carry an in-line absorber");
        assertThat(Refusal.of(() -> end().withPassage(Passage.free())))
                .containsExactly("passage: free: an end anchor holds the cable; only an intermediate anchor is passed");
        assertThat(Refusal.of(() -> Support.intermediate(null, null, null)))
                .containsExactly(
                        "id: missing: must be given",
                        "passage: missing: must be given",
                        "position: missing: must be given");
        assertThat(Refusal.of(() -> Support.end("a", new Point(0, Double.NaN, 0))))
                .containsExactly("position: Point[x=0.0, y=NaN, z=0.0]: must be three finite numbers");
        assertThat(Refusal.paths(() -> end().withPosition(Point.of(2e6, 0, -2e6))))
                .containsExactly("position[0]", "position[2]");
        assertThat(Refusal.paths(() -> end().withPosition(null))).containsExactly("position");
        assertThat(Refusal.paths(() -> end().withStiffness(null))).containsExactly("stiffness");
        assertThat(Refusal.paths(() -> end().withInlineAbsorber(null))).containsExactly("inlineAbsorber");
        assertThat(Refusal.paths(() -> end().withPost(null))).containsExactly("post");
        assertThat(Refusal.paths(() -> middle().withPassage(null))).containsExactly("passage");
        assertThat(Refusal.paths(() -> end().withCapacity(0.9))).containsExactly("capacity");
        assertThat(end().withCapacity(1).capacity()).hasValue(1);
    }

    @ParameterizedTest
    @CsvSource({"0, FREE, 0", "1e-9, FRICTION, 1e-9", "2, FRICTION, 2"})
    void coefficientsFromZeroToTwoAreTaken(double coefficient, Passage.Kind kind, double friction) {
        Passage p = Passage.friction(coefficient);
        assertThat(p.kind()).isEqualTo(kind);
        assertThat(p.friction()).isEqualTo(friction);
        assertThat(p).isEqualTo(Passage.friction(coefficient)).hasSameHashCodeAs(Passage.friction(coefficient));
        assertThat(p).isNotEqualTo(Passage.friction(0.5)).isNotEqualTo(Passage.clamped());
    }

    @ParameterizedTest
    @ValueSource(doubles = {-1e-9, 2.0000001, Double.NaN, Double.POSITIVE_INFINITY})
    void frictionBeyondItsRangeIsRefused(double coefficient) {
        assertThat(Refusal.of(() -> Passage.friction(coefficient)))
                .containsExactly("friction: " + coefficient + ": must be a coefficient of friction from 0 to 2");
    }

    @Test
    void passagesArePrinted() {
        assertThat(List.of(Passage.free(), Passage.friction(0.2), Passage.clamped()))
                .extracting(Passage::toString)
                .containsExactly("free", "friction 0.2", "clamped");
        assertThat(Passage.clamped().friction()).isInfinite();
        assertThat(Passage.free().friction()).isZero();
    }

    @Test
    void eachDirectionHasItsStiffness() {
        Stiffness k = Stiffness.rigid().withX(1e5).withY(2e5).withZ(3e5);
        assertThat(k).isEqualTo(new Stiffness(1e5, 2e5, 3e5));
        assertThat(k.isRigid()).isFalse();
        assertThat(Stiffness.rigid().isRigid()).isTrue();
        for (Stiffness one : List.of(
                Stiffness.alongX(1e5),
                Stiffness.rigid().withY(1e5),
                Stiffness.rigid().withZ(1e5))) {
            assertThat(one.isRigid()).as("%s", one).isFalse();
        }
        assertThat(Refusal.of(() -> new Stiffness(0, -1, Double.NaN)))
                .containsExactly(
                        "x: 0.0 N/m: must be above zero (leave it out where the anchor is rigid)",
                        "y: -1.0 N/m: must be above zero (leave it out where the anchor is rigid)",
                        "z: NaN N/m: must be above zero (leave it out where the anchor is rigid)");
        assertThat(Refusal.paths(() -> new Stiffness(0.009, 1.1e15, 1))).containsExactly("x", "y");
    }
}
