// SPDX-License-Identifier: GPL-3.0-or-later
// Every key in every state of every place and form: in an empty shop, in the demo's, and with names as long
// as they may be; in the usual window and in small ones.

#include "tests/app/keyboard_walk.h"

namespace holdfast::app::test {
namespace {

// A small laptop, a tablet held upright, and as small as the window may be made.
constexpr QSize kSmall[] = {{1024, 600}, {800, 1280}, {480, 320}};

TEST_F(KeyboardWalk, PlacesOfAnEmptyShop) {
    openWindow(empty());
    walkPlaces("empty");
    say("empty, places");
}

TEST_F(KeyboardWalk, FormsOfAnEmptyShop) {
    openWindow(empty());
    walkSlips("empty");
    say("empty, forms");
}

TEST_F(KeyboardWalk, PlacesOfTheDemo) {
    openWindow(demo());
    walkPlaces("demo");
    say("demo, places");
}

TEST_F(KeyboardWalk, FormsOfTheDemo) {
    openWindow(demo());
    walkSlips("demo");
    say("demo, forms");
}

TEST_F(KeyboardWalk, PlacesOfAShopOfLongNamesInASmallWindow) {
    openWindow(longNames(), kSmall[0]);
    walkPlaces("long names");
    say("long names, places, 1024x600");
}

TEST_F(KeyboardWalk, FormsOfAShopOfLongNamesInASmallWindow) {
    openWindow(longNames(), kSmall[0]);
    walkSlips("long names");
    say("long names, forms, 1024x600");
}

TEST_F(KeyboardWalk, TabBringsIntoViewWhatItComesToInEverySmallWindow) {
    openWindow(longNames());
    for (const QSize size : kSmall) {
        setSize(size);
        tabThroughPlaces("long names");
        tabThroughSlips("long names");
    }
    say("long names, Tab in small windows");
    openWindow(demo());
    for (const QSize size : kSmall) {
        setSize(size);
        tabThroughPlaces("demo");
    }
    say("with the demo’s places, Tab in small windows");
}

} // namespace
} // namespace holdfast::app::test
