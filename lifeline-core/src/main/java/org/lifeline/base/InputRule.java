package org.lifeline.base;

/**
 * The rules that inputs of the library are held to, beside the {@linkplain PlausibleRange ranges}. Names do not change
 * within a major version; sentences may.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public enum InputRule implements ViolationCode {
    /** Something that is needed was not given. */
    MISSING("must be given"),
    /** A number that must be finite and above zero. */
    NOT_ABOVE_ZERO("must be a finite number above zero"),
    /** A number that must be finite and not negative. */
    NEGATIVE("must be a finite number that is not negative"),
    /** A number that must be finite. */
    NOT_FINITE("must be a finite number"),
    /** A number outside the range that the rule allows. */
    OUTSIDE_RANGE("must lie from {0} to {1}"),
    /** A number that must lie inside a range, its ends left out. */
    NOT_INSIDE_RANGE("must lie above {0} and below {1}"),
    /** A number that must be above one bound and at most another. */
    NOT_ABOVE_AND_AT_MOST("must be above {0} and at most {1}"),
    /** A whole number below the least that is allowed. */
    BELOW_LEAST("must be at least {0}"),
    /** A name that is empty or blank. */
    BLANK("must not be blank"),
    /** A name that is used twice. */
    NOT_UNIQUE("must not be used twice"),
    /** An id that another support has. */
    ID_TAKEN("is the id of {0} as well"),
    /** The upper end of a range lies below its lower end. */
    RANGE_REVERSED("must not lie below low ({0})"),
    /** A list that must not be empty. */
    EMPTY("must name at least one {0}"),
    /** A line with fewer than two supports. */
    TOO_FEW_SUPPORTS("must have at least two"),
    /** A first or last support that is no end anchor. */
    END_ANCHOR_NEEDED("the first and the last support must be end anchors"),
    /** An end anchor between the first and the last support. */
    END_ANCHOR_INSIDE("only the first and the last support may be end anchors"),
    /** A span that is steeper than the model takes. */
    SPAN_TOO_STEEP("the span before it must not be steeper than 80° (run {0} m, rise {1} m)"),
    /** A position with a coordinate that is not finite. */
    POSITION_NOT_FINITE("must be three finite numbers"),
    /** The number of a span that the line does not have. */
    NO_SUCH_SPAN("must be a span from 1 to {0}"),
    /** A state with another number of spans than its line. */
    SPANS_OF_LINE("must be those of the line, {0}"),
    /** The number of a support that the line does not have. */
    NO_SUCH_SUPPORT_NUMBER("must be the number of a support from 0 to {0}"),
    /** The number of a row, a piece or another element that is not there. */
    NO_SUCH_NUMBER("must be a number from 0 to {0}"),
    /** An id that no worker of a result has. */
    NO_SUCH_WORKER("must be the id of a worker of the result"),
    /** An id that no support of the line has. */
    NO_SUCH_SUPPORT("must be the id of a support of the line"),
    /** A station outside its span. */
    STATION_OUTSIDE_SPAN("must lie inside the span, above 0 m and below {0} m"),
    /** A length of cable from the first anchor that the cable does not have. */
    LENGTH_OUTSIDE_CABLE("must lie above 0 m and below the unstretched length of the cable between its ends, {0} m"),
    /** An in-line absorber at an anchor that the cable passes. */
    INLINE_ABSORBER_INSIDE("only an end anchor can carry an in-line absorber"),
    /** A passage at an end anchor. */
    PASSAGE_AT_END("an end anchor holds the cable; only an intermediate anchor is passed"),
    /** A stiffness that is not above zero. */
    STIFFNESS_NOT_ABOVE_ZERO("must be above zero (leave it out where the anchor is rigid)"),
    /** A stiffness of a start, a stop or an absorber that is not above zero. */
    RATE_NOT_ABOVE_ZERO("must be above zero (leave it out for a rigid {0})"),
    /** A coefficient of friction out of range. */
    FRICTION_RANGE("must be a coefficient of friction from 0 to 2"),
    /** A quantity that has no ratio to a limit. */
    NO_RATIO("is an elevation, which has no ratio to a limit; use {0}"),
    /** A number that counts from one, up to a limit. */
    COUNT_RANGE("must be a number from 1 to {0}"),
    /** A number that counts from one. */
    COUNT_FROM_ONE("must be 1 or more"),
    /** A number that must not be below zero. */
    COUNT_FROM_ZERO("must not be negative"),
    /** A cable that weighs next to nothing, which is neither a rope nor the limit of none. */
    NEXT_TO_WEIGHTLESS("must be 0 or at least {0}: 16 digits do not carry the shape of a slack cable that light"),
    /** Mass and weight of the cable: not exactly one given. */
    MASS_OR_WEIGHT("give exactly one of massPerLength and weightPerLength (or a ropeClass with diameter)"),
    /** Stiffness of the cable: not exactly one way given. */
    ONE_STIFFNESS("give exactly one of axialStiffness, elasticModulus with metallicArea, and loadElongation"),
    /** A modulus without a cross-section. */
    AREA_NEEDED("must be given together with elasticModulus"),
    /** A rope class without a diameter. */
    DIAMETER_NEEDED("needs the diameter as well"),
    /** A tensile grade without a rope class. */
    ROPE_CLASS_NEEDED("is of use only together with a ropeClass"),
    /** Too few corners of a curve. */
    TOO_FEW_CORNERS("must have at least {0}"),
    /** A load–elongation curve that does not start at the origin. */
    CURVE_START("must start at no strain and no tension"),
    /** A loading curve that does not start at extension 0. */
    EXTENSION_START("must start at extension 0"),
    /** A coordinate of a curve that must rise. */
    NOT_RISING("must be larger than the {0} before it"),
    /** A coordinate of a curve that must not fall. */
    FALLING("must not be lower than the {0} before it"),
    /** A loading curve without force. */
    NO_FORCE("must reach a force above zero"),
    /** A first rise that never meets the deployment force. */
    RISE_TOO_SOFT("is so low that the deployment force is not reached within the maximum extension"),
    /** A maximum force below the clearance force. */
    MAXIMUM_BELOW_CLEARANCE("must not be lower than clearanceForce"),
    /** A temperature of a condition that has none. */
    WET_AT_ANY_TEMPERATURE("belongs to cold or hot: an absorber may be wet at any temperature"),
    /** Forces of a condition without a source. */
    FORCES_WITHOUT_SOURCE("must not be blank: forces without source are nobody's"),
    /** A condition of an absorber that is stated twice. */
    CONDITION_TWICE("must not be stated twice for one absorber"),
    /** An end of a range that lies before its start. */
    BEFORE_START("must not lie before {0}"),
    /** A model factor below 1 without a reason. */
    REASON_NEEDED("must say why a factor is below 1"),
    /** A worker named twice in one fall. */
    WORKER_TWICE("must not be named twice in one fall"),
    /** Fallers of one place who are attached in different ways. */
    ATTACHMENT_DIFFERS("must be attached to the line in the same way as the others who fall at this place"),
    /** A worker of a fall whom the design does not list. */
    WORKER_UNKNOWN("is not among the workers of the design"),
    /** A worker of a fall with other data than in the design. */
    WORKER_DIFFERS("has other data than the worker of this id in the design, {0}"),
    /** A connection that is too short to reach the line. */
    OUT_OF_REACH("does not reach the line, which is {0}"),
    /** A stated free fall that the connection cannot give. */
    FREE_FALL_TOO_LONG("is more than the connection of {0} can give: {1}, from {2} above the line to as much below it"),
    /** An installed tension beyond the strength of cable and terminations. */
    TENSION_ABOVE_STRENGTH(
            "is more than cable and terminations hold, {0} (breaking strength {1} N times termination efficiency {2})"),
    /** An installed state that strains the cable beyond what its stiffness alone says. */
    STRAIN_AT_INSTALLATION(
            "would stretch the cable by {0} at installation; a cable given by its axial stiffness is taken"
                    + " up to {1} (check axialStiffness, or give loadElongation)"),
    /** A sag larger than the span. */
    SAG_ABOVE_SPAN("must be at most the span of {0}"),
    /** Much more cable than there is way along the supports. */
    LENGTH_TOO_LONG("must be at most {0} times the distance along the supports of {1}"),
    /** An installed state that no tension within bounds gives. */
    INSTALLATION_NOT_FOUND("{0}"),
    /** An in-line absorber that would deploy at installation. */
    ABSORBER_ACTIVE_AT_INSTALLATION("must activate above the installed tension there, {0} N"),
    /** A table column of another length. */
    COLUMN_LENGTH("must have one number, or one for each of the {0} rows"),
    /** A later fall that names hanging workers. */
    HANGING_IN_LATER_FALL("must be named by the first fall"),
    /** Settings that exclude each other. */
    EXCLUDES("must not be asked for together with {0}"),
    /** A worker who takes part in two falls of one motion. */
    TAKES_PART_TWICE("must take part only once"),
    /** A second worker who takes part in every fall already. */
    NO_FALL_WITHOUT("takes part in every fall already; name a fall without this worker"),
    /** A delay of somebody who does not fall. */
    NOT_A_FALLER("must be the id of one of those who fall"),
    /** A time that ends before the catch. */
    TIME_TOO_SHORT("must be {0}"),
    /** A text that is no quantity of the wanted dimension. */
    NOT_A_QUANTITY("{0}"),
    /** A post with a second moment of area and no modulus. */
    MODULUS_NEEDED("must be given where a second moment of area is"),
    /** A post with a modulus and no second moment of area. */
    SECOND_MOMENT_NEEDED("must be given where a modulus of elasticity is"),
    /** A post that is stiffer or softer than what is computed. */
    POST_STIFFNESS(
            "gives the post a stiffness 3 E I/h³ of {0} N/m at its height of {1} m; must lie from {2} N/m to {3} N/m; leave"
                    + " it out where the post is rigid"),
    /** A range of factors that must contain 1. */
    FACTORS_CONTAIN_ONE("must be a range of factors above zero that contains 1"),
    /** An uncertainty that is as large as its value. */
    UNCERTAINTY_TOO_LARGE("must be smaller than the value ({0})"),
    /** A factor without a source. */
    SOURCE_NEEDED("must not be blank: a factor without source is nobody's"),
    /** A count of workers without a criterion. */
    CRITERION_NEEDED("must name at least one: without any, every number is met"),
    /** A limit per worker on something that is no capacity. */
    NOT_A_CAPACITY("must be a force that has to reach its limit"),
    /** A factor on something that is no load. */
    NOT_A_LOAD("must be a load that has to stay within its limit"),
    /** A requirement for each anchor that does not concern anchors. */
    NOT_OF_ANCHORS("must be a limit on a quantity of the anchors"),
    /** A published value without body, work or place. */
    PUBLISHED_BY_NOBODY("must be named for a published value"),
    /** Bounds that reach zero on a logarithmic scale. */
    NOT_LOGARITHMIC("must lie above zero for a logarithmic scale"),
    /** Bounds between two whole numbers of a variable that takes whole numbers only. */
    NO_WHOLE_NUMBER("must hold a whole number"),
    /** A distribution that is cut down to next to nothing. */
    CUT_TOO_FAR("must hold at least a millionth of the distribution"),
    /** A value outside a range that was given with it. */
    NOT_IN_RANGE("must lie in {0}"),
    /** A range whose ends are the same. */
    NO_WIDTH("must have some width"),
    /** Variables or responses that a part of a study does not have. */
    NOT_OF_PART("must be those of the part, {0}"),
    /** Fewer cases than were done. */
    FEWER_THAN_DONE("must be at least the last one done, {0}"),
    /** Seed or name of another study. */
    NOT_THAT_OF_STUDY("must be that of the study, {0}"),
    /** Variables or responses of another study. */
    NOT_THOSE_OF_STUDY("must be those of the study, {0}"),
    /** A stored number of values that its bins contradict. */
    NOT_THAT_OF_BINS("must be that of the bins, {0}"),
    /** Stored first cases that are not all. */
    FIRST_CASES_LACKING("must be all cases with a value, up to {0}"),
    /** A stored case with another number of quantities. */
    QUANTITIES_DIFFER("must be those of {0} quantities each"),
    /** Stored failures that are not all. */
    FAILURES_LACKING("must be all {0} that failed, up to {1}"),
    /** More failed cases than were done. */
    MORE_THAN_DONE("must be at most the cases that were done, {0}"),
    /** More values than cases with a result. */
    MORE_THAN_RESULTS("must be at most the cases that have a result, {0}"),
    /** Stored sums of another number of quantities. */
    SUMS_DIFFER("must be those of the variables and the response"),
    /** A range of cases that ends before it begins. */
    LAST_BEFORE_FIRST("must be at least the first, {0}"),
    /** Cases that two parts of a study share. */
    CASES_TWICE("must not be drawn twice: {0} are there already"),
    /** A stored sum that cannot be read. */
    NOT_A_SUM("must be sums as the library writes them"),
    /** The number of a bin that no histogram has. */
    NO_SUCH_BIN("must be the number of a bin"),
    /** A value that a distribution gave beyond the bounds of its variable. */
    DRAWN_OUTSIDE("was drawn outside the bounds of the variable, {0}"),
    /** A range of factors with 1 inside it. */
    FACTORS_AROUND_ONE("must be a range of factors above zero around 1"),
    /** A result of a method that cannot be checked so. */
    ENERGY_BALANCE_NEEDED("must be the energy balance"),
    /** A duration with so short an interval that its history is too long. */
    TOO_MANY_SAMPLES("must not make more than {0} samples of a history"),
    /** A whole number above the most that is allowed. */
    ABOVE_MOST("must be at most {0}"),
    /** An obstruction of a design without any. */
    NO_OBSTRUCTION("the design has no obstruction"),
    /** The number of an obstruction that the design does not have. */
    NO_SUCH_OBSTRUCTION("must be the number of an obstruction from 0 to {0}"),
    /** A support that is to be changed in what it does not have. */
    INLINE_ABSORBER_NEEDED("must carry an in-line energy absorber"),
    /** A worker whose connection is to be changed in what it does not have. */
    DEPLOYMENT_FORCE_NEEDED("must have a connecting subsystem with a deployment force"),
    /** A measured value that no pretension gives. */
    PRETENSION_NOT_FOUND("no pretension gives it: one above {0} {1}"),
    /** A measured value of a line that could not hang so. */
    SLACKER_THAN_IT_HANGS("the line would have to be slacker than it can hang"),
    /** A rule in words of its own, see {@link Violation#rule()}. */
    STATED("{0}");

    private final String english;

    InputRule(String english) {
        this.english = english;
    }

    @Override
    public String key() {
        return name();
    }

    @Override
    public String english() {
        return english;
    }
}
