package org.lifeline.file.json;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonStreamContext;
import com.fasterxml.jackson.core.io.ContentReference;
import com.fasterxml.jackson.core.io.JsonEOFException;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Says in words what is wrong with a text that is not JSON. */
public final class JsonFault {
    private static final Pattern CODE = Pattern.compile("code (\\d{1,7})");
    private static final Pattern TOKEN = Pattern.compile("Unrecognized token '([^']{1,60})");

    private JsonFault() {}

    /**
     * What is wrong where a parser stopped.
     *
     * @param e what it said
     * @return the words, without the library's own
     */
    public static String words(JsonProcessingException e) {
        if (e instanceof JsonEOFException && e.getProcessor() instanceof JsonParser parser) {
            return "the text ends before " + open(parser.getParsingContext());
        }
        String said = String.valueOf(e.getOriginalMessage());
        Matcher token = TOKEN.matcher(said);
        if (token.find()) {
            return '"' + token.group(1) + "\" is no value; a text stands in double quotes";
        }
        if (said.contains("Leading zeroes")) {
            return "a number must not begin with a needless zero";
        }
        if (said.contains("Illegal unquoted character")) {
            return "a text in quotes holds a line break or another control character";
        }
        if (said.startsWith("Duplicate field")) {
            return "a key is given twice in one object";
        }
        if (said.contains("escape")) {
            return "there is no such escape behind a backslash";
        }
        Matcher code = CODE.matcher(said);
        if ((said.startsWith("Unexpected character") || said.startsWith("Illegal character")) && code.find()) {
            int character = Integer.parseInt(code.group(1));
            return (Character.isValidCodePoint(character) && !Character.isISOControl(character)
                            ? "the character " + String.valueOf(Character.toChars(character))
                            : "a control character")
                    + " is not expected here";
        }
        return said.startsWith("Invalid numeric value") ? "this is no number" : "it cannot be read from here on";
    }

    private static String open(JsonStreamContext context) {
        JsonLocation at = context.startLocation(ContentReference.unknown());
        String place = " that begins at line " + at.getLineNr() + ", column " + at.getColumnNr() + " is closed";
        return context.inObject()
                ? "the object" + place
                : context.inArray() ? "the array" + place : "its value is whole";
    }
}
