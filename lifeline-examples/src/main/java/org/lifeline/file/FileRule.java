package org.lifeline.file;

import org.lifeline.base.ViolationCode;
import org.lifeline.file.json.JsonRule;

/**
 * The rules that a design file is held to, beside those of the library. Names do not change within a major version; sentences
 * may.
 *
 * <p>Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public enum FileRule implements ViolationCode {
    /** A key of a lanyard at a self-retracting device. */
    OF_A_LANYARD("belongs to a lanyard; a retractable has a lockDistance"),
    /** A key that goes with a loading curve, without one. */
    BESIDE_LOADING_CURVE("stands here only beside a loadingCurve"),
    /** Several alternatives, or none of them. */
    EXACTLY_ONE("give exactly one of {0}"),
    /** Another format than the one that is read. */
    NOT_THE_FORMAT("must be \"{0}\""),
    /** An id that another element of the list has. */
    ID_TAKEN_IN_FILE("is the id of {0}[{1}] as well"),
    /** An id that another fall has. */
    ID_TAKEN_BY_FALL("is the id of falls[{0}] as well"),
    /** An installed state that finds no equilibrium. */
    CANNOT_BE_TENSIONED("the line cannot be tensioned: {0}"),
    /** A criterion that is named twice. */
    NAMED_TWICE("is named twice"),
    /** What is no criterion. */
    NOT_A_CRITERION("must be the id of a built-in criterion, or an object that states one"),
    /** An id that no built-in criterion has. */
    UNKNOWN_CRITERION("is not a built-in criterion; {0}"),
    /** A limit per worker beside a factor. */
    NOT_BESIDE_A_FACTOR("does not stand beside a factor"),
    /** A passage at an end anchor. */
    PASSAGE_AT_END_ANCHOR("an end anchor holds the cable; only intermediate anchors have a passage"),
    /** A stiffness beside the section of a post. */
    GIVEN_BY_SECTION("must be left out where the section of the post gives it"),
    /** What is no position. */
    NOT_A_POSITION("must be three lengths, for example [\"0 m\", \"0 m\", \"12.4 m\"]"),
    /** What is no passage. */
    NOT_A_PASSAGE("must be \"free\", \"clamped\" or {\"friction\": 0.12}"),
    /** A pair of axes without either. */
    AXIS_NEEDED("must have at least one of x and y"),
    /** A temperature out of range. */
    TEMPERATURE_RANGE("must lie between absolute zero and 1000 °C"),
    /** A sag without its span. */
    SPAN_NEEDED("must be given together with initialSag"),
    /** A span without what is given in it. */
    SPAN_OF_NOTHING("stands only beside initialSag or horizontalTension"),
    /** An efficiency above 1. */
    EFFICIENCY_ABOVE_ONE("must be at most 1"),
    /** A rope class that the library does not have. */
    UNKNOWN_ROPE_CLASS("is not a known rope class; known: {0}"),
    /** A rope class without a diameter. */
    DIAMETER_OF_CLASS_NEEDED("must be given together with ropeClass"),
    /** What is no object. */
    NOT_AN_OBJECT("must be a JSON object { … }"),
    /** What is no array. */
    NOT_AN_ARRAY("must be a JSON array [ … ]"),
    /** An array that is too long. */
    TOO_MANY_ELEMENTS("must not have more than {0}; split the design"),
    /** What is no text. */
    NOT_A_TEXT("must be a text in quotes"),
    /** A word that is none of the choices. */
    NOT_ONE_OF("must be one of \"{0}\"{1}"),
    /** A quantity without unit, or something else. */
    NOT_A_QUANTITY_TEXT("must be a text with a number and its unit, for example \"{0}\""),
    /** What is no number. */
    NOT_A_NUMBER("must be a number without unit"),
    /** What is neither true nor false. */
    NOT_A_TRUTH_VALUE("must be one of true, false"),
    /** What is no whole number from 1. */
    NOT_A_COUNT("must be a whole number, counted from 1"),
    /** What is no pair of quantities. */
    NOT_A_PAIR("must be a pair [\"{0}\", \"{1}\"]"),
    /** A key that the format does not have. */
    UNKNOWN_KEY("is an unknown key{0}"),
    /** An id that no worker has. */
    UNKNOWN_WORKER("is not the id of a worker; {0}"),
    /** A highest temperature below the lowest. */
    BELOW_LOWEST_TEMPERATURE("must not be lower than lowestTemperature"),
    /** A tolerance that leaves nothing. */
    TOLERANCE_OF_ALL("must be below 100 %"),
    /** What is no constructional stretch. */
    NOT_A_STRETCH("must be \"steel core\", \"fibre core\" or {\"from\", \"to\", \"source\"}"),
    /** A range that ends below its start. */
    TO_BELOW_FROM("must not be smaller than from"),
    /** A line of fewer than two supports. */
    TOO_FEW_SUPPORTS_IN_FILE("must have at least two supports"),
    /** A stated criterion with the id of a built-in one. */
    BUILT_IN_ID("is the id of a built-in criterion"),
    /** A support beside another demand. */
    BESIDE_SUPPORT_LOAD("stands only beside the demand supportLoad"),
    /** An id that no support has. */
    UNKNOWN_SUPPORT("is not the id of a support"),
    /** What is no place. */
    NOT_A_PLACE("give exactly one: a span with its station, or a support"),
    /** More of something than is computed in one piece. */
    TOO_LARGE("must not come to more than {0} {1}"),
    /** A result whose design file is another one. */
    NOT_OF_DESIGN("must be that of the design file, {0}"),
    /** Violations that are only counted. */
    NOT_LISTED("are not listed"),
    /** A file that is too large. */
    LARGER_THAN_READ("must not be larger than {0} bytes"),
    /** Nesting, a number or a key beyond what is read. */
    BEYOND_A_LIMIT("exceeds a limit: at most {0} levels of nesting, {1} digits of a"
            + " number and {2} characters of a key are read"),
    /** A text without an object. */
    NO_OBJECT("must hold a JSON object"),
    /** More text behind the end. */
    GOES_ON("must end after its JSON object"),
    /** A text that is not JSON. */
    NOT_JSON("is not JSON: {0}"),
    /** Bytes that are no text. */
    NOT_UTF8("is not UTF-8"),
    /** A key that is given twice. */
    KEY_TWICE("is given twice in one object (again in line {0}, column {1})"),
    /** What is no whole number. */
    NOT_A_WHOLE_NUMBER("must be a whole number"),
    /** What is no range of cases. */
    NOT_A_RANGE_OF_CASES("must be the first and the last case"),
    /** A smallest value above the largest. */
    ABOVE_LARGEST("must not be above the largest, {0}"),
    /** A number that is not finite. */
    NOT_FINITE_IN_FILE("must be a finite number"),
    /** A number below zero. */
    NEGATIVE_IN_FILE("must be finite and not negative"),
    /** A number that is not above zero. */
    NOT_ABOVE_ZERO_IN_FILE("must be finite and above zero");

    private final String english;

    FileRule(String english) {
        this.english = english;
    }

    /** The code of a rule that the text of any file is held to. */
    static FileRule of(JsonRule rule) {
        return switch (rule) {
            case LARGER_THAN_READ -> LARGER_THAN_READ;
            case BEYOND_A_LIMIT -> BEYOND_A_LIMIT;
            case NO_OBJECT -> NO_OBJECT;
            case GOES_ON -> GOES_ON;
            case NOT_JSON -> NOT_JSON;
            case NOT_UTF8 -> NOT_UTF8;
            case KEY_TWICE -> KEY_TWICE;
            case NOT_LISTED -> NOT_LISTED;
        };
    }

    @Override
    public String key() {
        return "FILE_" + name();
    }

    @Override
    public String english() {
        return english;
    }
}
