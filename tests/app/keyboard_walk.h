// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// A walk over every place and every form by machine: in each state each key is pressed, and the keyboard must
// be where work goes on, Tab must go on as the eye reads, bring into view what it comes to and come round,
// and nothing may be written that the screen does not say.

#include "app/shell/main_window.h"
#include "app/shell/places.h"
#include "tests/app/shop_fixture.h"

#include <map>
#include <memory>
#include <string>

namespace holdfast::app::test {

class KeyboardWalk : public ShopFixture {
protected:
    void SetUp() override { close(); }
    void TearDown() override;

    // ── shops ──
    std::filesystem::path empty() const { return path(); }
    std::filesystem::path demo();
    // Of everything one at least, each with a name of many letters and no space in it.
    std::filesystem::path longNames();

    void openWindow(const std::filesystem::path& shop, QSize size = {1366, 768});
    void setSize(QSize size);

    // ── walks; `shop` is for the words of a failure ──
    void walkPlaces(const std::string& shop);
    void walkSlips(const std::string& shop);
    // Once round with Tab, in every place and in every form.
    void tabThroughPlaces(const std::string& shop);
    void tabThroughSlips(const std::string& shop);
    // What was done, place by place.
    void say(const std::string& shop) const;

private:
    struct Tally {
        int states = 0;
        int presses = 0;
        int acts = 0;
        int failures = 0;
    };

    Workshop& workshop() { return *m_window->workshop(); }
    ShopDesk& open() { return *m_window->desk(); }
    db::Shop& shop() { return open().file(); }
    std::int64_t entries();
    Tally& begin(const std::string& what);
    void end();

    void expectKeyboard(const std::string& after, bool byTab);
    void expectAnnounced(std::int64_t before, bool wasTyping, const std::string& after);
    void expectTabReads(QWidget* part, const std::string& where);
    void expectInView(const std::string& after);
    void press(Qt::Key key, const std::string& where);
    void restore(const BuiltPlace& built, std::int64_t before);
    void walkStops(const BuiltPlace& built, const std::string& where);
    void walkSlip(const std::string& where);
    void tabRound(QWidget* part, const std::string& where);
    template <class Walk>
    void eachSlip(const std::string& shop, const Walk& walk);

    std::unique_ptr<MainWindow> m_window;
    std::map<std::string, Tally> m_tallies;
    Tally* m_tally = nullptr;
    int m_failuresBefore = 0;
};

} // namespace holdfast::app::test
