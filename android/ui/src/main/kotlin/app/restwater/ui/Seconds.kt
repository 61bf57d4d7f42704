package app.restwater.ui

import app.restwater.core.BankView
import app.restwater.core.RodView

/**
 * The Bank at this second. It is read while drawing, so that each second only redraws figures and recomposes nothing.
 */
typealias SecondsOf = () -> BankView

/** The record without what changes each second. It stays equal from one second to the next, so nothing is recomposed. */
internal fun BankView.withoutSeconds(): BankView = copy(
    rods = rods.map { it.copy(digits = if (it.digits.isEmpty()) "" else PLACEHOLDER, elapsedMs = 0) },
    strip = strip.copy(elapsedMin = strip.elapsedMin?.let { 0.0 }),
)

/** The rod as it is at this second. */
internal fun BankView.rod(number: UByte): RodView? = rods.find { it.rod == number }

/** Replaces the running digits, so that two records that differ only in them are equal. */
private const val PLACEHOLDER = "0:00"
