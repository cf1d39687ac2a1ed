package org.fallow.illness;

/**
 * What an athlete said to a coach today.
 *
 * @param able to feel able to train
 * @param eating to eat and drink normally
 * @param reason how the coach knows
 */
public record NewSaid(boolean able, boolean eating, String reason) {
}
