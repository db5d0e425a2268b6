@org.jspecify.annotations.NullMarked
package lengthwise.pdf;
