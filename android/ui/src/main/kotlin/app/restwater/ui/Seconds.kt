package app.restwater.ui

import app.restwater.core.BankView
import app.restwater.core.RodView

/**
 * The part of the Bank that changes each second: read while drawing, so that each second redraws figures and composes
 * nothing.
 */
typealias SecondsOf = () -> BankView

/** The record without what changes each second: equal from one second to the next, so that nothing is recomposed. */
internal fun BankView.withoutSeconds(): BankView = copy(
    rods = rods.map { it.copy(digits = if (it.digits.isEmpty()) "" else STANDS, elapsedMs = 0) },
    strip = strip.copy(elapsedMin = strip.elapsedMin?.let { 0.0 }),
)

/** The rod as it is at this second. */
internal fun BankView.rod(number: UByte): RodView? = rods.find { it.rod == number }

/** Placeholder for running digits. */
private const val STANDS = "0:00"
