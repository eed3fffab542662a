// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The Back room: the shop's own numbers, films and their recipes, presses and their checks, fairs, copies of
// the file, the second laptop, and what belongs to this computer. At the left the sections with what they
// come to, at the right the chosen one, its own acts above its lines. Tab or Enter goes from the list into
// what is shown; Enter on a line does what it offers.

#include "app/desk/beside.h"
#include "app/desk/place.h"
#include "app/places/back_room/room_sheet.h"

class QBoxLayout;

namespace holdfast::app {

class Button;
class Card;
class Choice;
class FlowLayout;
class Label;
class RoomLines;
class VerticalScroll;

class BackRoomPlace : public Place {
    Q_OBJECT

public:
    explicit BackRoomPlace(ShopDesk& desk, QWidget* parent = nullptr);

    QString subtitle() const override;
    void opened() override;
    // A section; or that of a film, a press or a fair.
    void turnTo(const SlipTarget& matter) override;
    void turnToSection(RoomSection section);
    // Instead of the printers of this computer, as for pictures; none: those of this computer again.
    static void setPrinters(std::optional<std::vector<PrintQueue>> queues);

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    void goIntoSheet();
    void layCards();
    QWidget* makeSections();
    QWidget* makeSheet();
    void refresh();
    void readFile();
    void readBackups();
    void showSections();
    void showOther();
    void showSheet();
    void showActs(const RoomSheet& sheet);
    void act(const RoomDeed& deed);
    void lookForPrinters();
    void usePrinter(const UsePrinter& wish);
    RoomSection section() const;

    RoomFile m_file;
    bool m_isStale = true;
    Choice* m_sections = nullptr;
    Card* m_sheet = nullptr;
    Label* m_intro = nullptr;
    RoomLines* m_lines = nullptr;
    Label* m_note = nullptr;
    VerticalScroll* m_scroll = nullptr;
    QWidget* m_acts = nullptr;
    FlowLayout* m_actsRow = nullptr;
    QBoxLayout* m_row = nullptr;
    Card* m_sectionsCard = nullptr;
    Beside<std::vector<PrintQueue>> m_printers;
};

} // namespace holdfast::app
