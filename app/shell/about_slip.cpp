// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/about_slip.h"

#include "app/shell/made_with.h"

#include <QCoreApplication>
#include <QFile>
#include <QStringList>

#include <utility>

namespace holdfast::app {

namespace {

class AboutSlip : public PageSlip {
    Q_DECLARE_TR_FUNCTIONS(AboutSlip)

public:
    AboutSlip(ShopDesk& shopDesk, std::function<void()> readLicences, QWidget* parent)
        : PageSlip(shopDesk, tr("About Holdfast"),
                   tr("Version %1").arg(QCoreApplication::applicationVersion()), std::move(readLicences),
                   parent) {
        form().note(
            tr("Holdfast is free software: you may use it, read how it works, change it and pass it on "
               "under the GNU General Public License, version 3 or later. It comes with no warranty."));
        form().note(tr("Copyright 2026 the Holdfast team"));
        form().section(tr("Libraries it runs with"));
        for (const MadeWith& library : librariesUsed())
            form().note(tr("%1 %2, %3: %4").arg(library.name, library.version, library.use, library.licence));
        form().section(tr("Fonts it brings along"));
        for (const MadeWith& bundled : fontsBundled())
            form().note(tr("%1, %2: %3").arg(bundled.name, bundled.use, bundled.licence));
        setAction(tr("Read the licences"));
    }
};

// The paragraphs of a text whose lines were broken for a page of fixed width.
QStringList paragraphsIn(const QString& file) {
    QFile text(file);
    if (!text.open(QIODevice::ReadOnly))
        return {};
    QStringList paragraphs;
    for (const QString& part : QString::fromUtf8(text.readAll()).split(QStringLiteral("\n\n")))
        if (const QString paragraph = part.simplified(); !paragraph.isEmpty())
            paragraphs.append(paragraph);
    return paragraphs;
}

class LicencesSlip : public PageSlip {
    Q_DECLARE_TR_FUNCTIONS(AboutSlip)

public:
    LicencesSlip(ShopDesk& shopDesk, std::function<void()> readAbout, QWidget* parent)
        : PageSlip(shopDesk, tr("Licences"), {}, std::move(readAbout), parent) {
        addText(tr("Holdfast"), ownLicenceText());
        for (const MadeWith& bundled : fontsBundled())
            addText(bundled.name, bundled.text);
        setAction(tr("Back to what Holdfast is"));
    }

private:
    void addText(const QString& of, const QString& file) {
        form().section(of);
        for (const QString& paragraph : paragraphsIn(file))
            form().note(breakable(paragraph));
    }
};

} // namespace

PageSlip::PageSlip(ShopDesk& desk, const QString& title, const QString& about, std::function<void()> turnOver,
                   QWidget* parent)
    : FormSlip(desk, title, about, parent)
    , m_turnOver(std::move(turnOver)) {
    form().setFocusPolicy(Qt::StrongFocus);
}

void PageSlip::begin() {
    form().setFocus(Qt::OtherFocusReason);
}

Slip* makeAboutSlip(ShopDesk& desk, std::function<void()> readLicences, QWidget* parent) {
    return new AboutSlip(desk, std::move(readLicences), parent);
}

Slip* makeLicencesSlip(ShopDesk& desk, std::function<void()> readAbout, QWidget* parent) {
    return new LicencesSlip(desk, std::move(readAbout), parent);
}

} // namespace holdfast::app
