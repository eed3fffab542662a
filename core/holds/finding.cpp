// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/holds/finding.h"

namespace holdfast {

std::string freeingWords(FreeingAct act) {
    switch (act) {
    case FreeingAct::WashBlank:
        return "Put in wash";
    case FreeingAct::MarkDry:
        return "Mark as dry";
    case FreeingAct::MarkNotPrewashed:
        return "Press it unwashed";
    case FreeingAct::ReadLabel:
        return "Read the label";
    case FreeingAct::ChooseFilm:
        return "Choose another film";
    case FreeingAct::ChooseBlank:
        return "Choose a blank";
    case FreeingAct::ReceiveBlanks:
        return "Receive blanks";
    case FreeingAct::ReceiveRoll:
        return "Receive a roll";
    case FreeingAct::TestStrip:
        return "Press a test strip";
    case FreeingAct::MoveRoll:
        return "Move the roll";
    case FreeingAct::RecordReading:
        return "Record a reading";
    case FreeingAct::EnterRecipe:
        return "Enter the recipe";
    case FreeingAct::ConfirmRecipe:
        return "Confirm the recipe";
    case FreeingAct::CheckPress:
        return "Check the press";
    case FreeingAct::AddPress:
        return "Add a press";
    case FreeingAct::ChooseWayRound:
        return "Choose a way round";
    case FreeingAct::ReorderLayers:
        return "Reorder the layers";
    case FreeingAct::ConfirmWording:
        return "Confirm with customer";
    case FreeingAct::TakePayment:
        return "Take a payment";
    case FreeingAct::NoteLawChecked:
        return "Note who checked";
    }
    return {};
}

} // namespace holdfast
