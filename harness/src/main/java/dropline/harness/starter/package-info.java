/**
 * What a builder starts from: a pit file made from a spreadsheet of panels or from nothing, and a first recording to
 * play through it. Start from {@link dropline.harness.starter.Starter}. Everything it writes is text for a person to go
 * on with; nothing here runs a simulation.
 */
@NullMarked
package dropline.harness.starter;

import org.jspecify.annotations.NullMarked;
