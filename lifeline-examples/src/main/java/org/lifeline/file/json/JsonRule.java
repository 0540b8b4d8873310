package org.lifeline.file.json;

/** The rules that JSON text is held to before anything of its content; whoever reads gives each a code of its own. */
public enum JsonRule {
    /** More bytes than are read. */
    LARGER_THAN_READ,
    /** Nesting, a number or a key beyond what is read. */
    BEYOND_A_LIMIT,
    /** A text without an object. */
    NO_OBJECT,
    /** More text behind the end. */
    GOES_ON,
    /** A text that is not JSON. */
    NOT_JSON,
    /** Bytes that are no text. */
    NOT_UTF8,
    /** A key that is given twice. */
    KEY_TWICE,
    /** Violations that are only counted. */
    NOT_LISTED
}
