import AppIntents
import RestwaterKit
import SwiftUI

// Compiled with the app by `./dev check swiftui`, and part of nothing that ships: what the system does with a type depends
// on what the type declares to be.

private func runsInTheAppsProcess<Intent: LiveActivityIntent>(_: Intent.Type) {}

private func isDrawnAgainOnlyIfItChanged<Piece: View & Equatable>(_: Piece.Type) {}

private func claims() {
    // Only an intent for Live Activities may begin one while the app is in the background.
    runsInTheAppsProcess(NextKeyIntent.self)
    runsInTheAppsProcess(CastIntent.self)
    runsInTheAppsProcess(BiteIntent.self)
    runsInTheAppsProcess(WoundInIntent.self)
    runsInTheAppsProcess(UndoIntent.self)
    runsInTheAppsProcess(LockScreenKey.self)
    runsInTheAppsProcess(AlarmStopped.self)
    isDrawnAgainOnlyIfItChanged(PieceView.self)
}
