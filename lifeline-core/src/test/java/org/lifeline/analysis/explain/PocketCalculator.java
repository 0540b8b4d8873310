package org.lifeline.analysis.explain;

/** Works out a formula with numbers as it is printed, knowing nothing of how it was made. */
final class PocketCalculator {
    private final String text;
    private int at;

    private PocketCalculator(String text) {
        this.text = text.replace(" ", "");
    }

    static double of(String formula) {
        PocketCalculator c = new PocketCalculator(formula);
        double value = c.sum();
        if (c.at != c.text.length()) {
            throw new IllegalArgumentException("stopped at " + c.at + " of " + c.text);
        }
        return value;
    }

    private boolean take(String token) {
        if (text.startsWith(token, at)) {
            at += token.length();
            return true;
        }
        return false;
    }

    private double sum() {
        double value = product();
        while (true) {
            if (take("+")) {
                value += product();
            } else if (take("−")) {
                value -= product();
            } else {
                return value;
            }
        }
    }

    private double product() {
        double value = power();
        while (true) {
            if (take("·")) {
                value *= power();
            } else if (take("/")) {
                value /= power();
            } else {
                return value;
            }
        }
    }

    private double power() {
        double value = atom();
        return take("²") ? value * value : value;
    }

    private double atom() {
        if (take("−")) {
            return -atom();
        }
        if (take("√(")) {
            return Math.sqrt(closed());
        }
        if (take("artanh(")) {
            double x = closed();
            return 0.5 * (Math.log1p(x) - Math.log1p(-x));
        }
        if (take("arctan(")) {
            return Math.atan(closed());
        }
        if (take("arccos(")) {
            return Math.acos(closed());
        }
        if (take("ln(")) {
            return Math.log(closed());
        }
        if (take("max(0;")) {
            return Math.max(0, closed());
        }
        if (take("|")) {
            double value = Math.abs(sum());
            expect("|");
            return value;
        }
        if (take("(")) {
            return closed();
        }
        int from = at;
        while (at < text.length() && (Character.isDigit(text.charAt(at)) || text.charAt(at) == '.')) {
            at++;
        }
        return Double.parseDouble(text.substring(from, at));
    }

    private double closed() {
        double value = sum();
        expect(")");
        return value;
    }

    private void expect(String token) {
        if (!take(token)) {
            throw new IllegalArgumentException("expected " + token + " at " + at + " of " + text);
        }
    }
}
