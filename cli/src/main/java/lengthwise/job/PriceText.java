package lengthwise.job;

import java.math.BigDecimal;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import lengthwise.model.Fabric.Price;
import lengthwise.model.Length;

/** Prices as makers write them: {@code 14.50 per m}, {@code 3 per 10 cm}, without a currency. */
public final class PriceText {
    /** What is asked for where nothing is found. */
    public static final String EXAMPLE = "a price such as 14.50 per m, without a currency";

    private static final Pattern PRICE = Pattern.compile("([0-9]{1,9}(?:\\.[0-9]{1,6})?) per (.+)");

    private PriceText() {}

    /**
     * Reads a price.
     *
     * @throws JobException in one clause, without a place, if the text is no price
     */
    public static Price parse(String text) throws JobException {
        Matcher price = PRICE.matcher(text);
        if (!price.matches()) {
            throw new JobException("found " + Quote.of(text) + "; write " + EXAMPLE);
        }
        String per = price.group(2);
        Length length;
        try {
            length = LengthText.parse(Character.isLetter(per.charAt(0)) ? "1 " + per : per);
        } catch (JobException notALength) {
            throw new JobException(
                    "found %s; the price is per a length: m, yd, 10 cm".formatted(Quote.of(text)), notALength);
        }
        if (length.micrometres() <= 0) {
            throw new JobException("found %s; the price is per a length above 0".formatted(Quote.of(text)));
        }
        return new Price(new BigDecimal(price.group(1)).doubleValue(), length);
    }

    /** Returns text that reads back as the same price. */
    public static String print(Price price) {
        BigDecimal amount = BigDecimal.valueOf(price.amount());
        String shown = amount.setScale(Math.max(2, amount.stripTrailingZeros().scale()))
                .toPlainString();
        for (LengthUnit one : LengthUnit.values()) {
            if (price.per().micrometres() == one.micrometres()) {
                return shown + " per " + one.symbol();
            }
        }
        return shown + " per " + LengthText.print(price.per(), LengthUnit.CM);
    }
}
