package org.lifeline.report.document;

/**
 * What a report was made from and with. The library reads no clock and no file; the caller says what it knows.
 *
 * <p>Immutable and thread-safe.
 *
 * @param program name and version of the program
 * @param designHash SHA-256 of the design file as read, in hexadecimal; empty if there is no file
 * @param date date of issue in the caller's words; empty to leave it out
 * @param preparedBy who made it, to be checked and signed; empty to leave a blank
 * @since 1.0.0
 */
public record Provenance(String program, String designHash, String date, String preparedBy) {

    /**
     * Of a program alone.
     *
     * @param program name and version
     * @return the provenance without hash, date and name
     */
    public static Provenance of(String program) {
        return new Provenance(program, "", "", "");
    }
}
