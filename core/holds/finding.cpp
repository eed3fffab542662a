// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/holds/finding.h"

namespace holdfast {

Phrase freeingWords(FreeingAct act) {
    switch (act) {
    case FreeingAct::WashBlank:
        return phrase("Put in the wash");
    case FreeingAct::MarkDry:
        return phrase("Mark as dry");
    case FreeingAct::MarkNotPrewashed:
        return phrase("Press unwashed");
    case FreeingAct::ReadLabel:
        return phrase("Read the label");
    case FreeingAct::ChooseFilm:
        return phrase("Choose another film");
    case FreeingAct::ChooseBlank:
        return phrase("Choose a blank");
    case FreeingAct::ReceiveBlanks:
        return phrase("Receive blanks");
    case FreeingAct::ReceiveRoll:
        return phrase("Receive a roll");
    case FreeingAct::TestStrip:
        return phrase("Press a test strip");
    case FreeingAct::MoveRoll:
        return phrase("Move the roll");
    case FreeingAct::RecordReading:
        return phrase("Record a reading");
    case FreeingAct::EnterRecipe:
        return phrase("Enter the recipe");
    case FreeingAct::ConfirmRecipe:
        return phrase("Confirm the recipe");
    case FreeingAct::CheckPress:
        return phrase("Check the press");
    case FreeingAct::AddPress:
        return phrase("Add a press");
    case FreeingAct::ChooseWayRound:
        return phrase("Choose a way round");
    case FreeingAct::ReorderLayers:
        return phrase("Reorder the layers");
    case FreeingAct::ConfirmWording:
        return phrase("Confirm with the customer");
    case FreeingAct::TakePayment:
        return phrase("Take a payment");
    case FreeingAct::NoteLawChecked:
        return phrase("Note who checked");
    }
    return {};
}

} // namespace holdfast
