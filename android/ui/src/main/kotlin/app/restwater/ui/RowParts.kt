package app.restwater.ui

import androidx.compose.runtime.Composable
import androidx.compose.runtime.remember
import androidx.compose.ui.text.font.FontWeight
import app.restwater.core.BankLayout
import app.restwater.core.Rect
import app.restwater.core.RowAsk
import app.restwater.core.RowPlace
import app.restwater.core.rowPlace

/**
 * The parts of a page of [keys] choices, as the core places them: a caution, what is open, if anything is, and details of it in
 * [sizes] relative to other text.
 */
@Composable
internal fun rowParts(
    says: String?, source: String, sizes: Pair<Float, Float>, keys: Int, place: Rect, layout: BankLayout, typed: Boolean, caution: String,
): RowPlace {
    val mm = LocalPxPerMm.current
    val body = layout.text.body.toFloat()
    val heights = heights()
    val warned = if (caution.isBlank()) 0.0 else cautionHeight(caution, body * CAUTION_EM, place.width)
    fun says(em: Float) = heights.of(says.orEmpty(), em * sizes.first, place.width, FontWeight.Bold)
    fun source(em: Float) = heights.of(source, em * sizes.second, place.width)
    val usual = body * layout.usualShare(mm)
    val rows = rowsOf(keys, layout).toUInt()
    val ask = RowAsk(place, mm.toDouble(), says != null, typed, rows, warned, says(body), source(body), says(usual), source(usual))
    return remember(ask) { rowPlace(ask) }
}

/** Sizes of a caution and of where a value is from, relative to other text. */
internal const val CAUTION_EM = 0.85f
internal const val SOURCE_EM = 0.9f
