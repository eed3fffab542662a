// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Imports the file of a climate logger: read in the background, what was found is shown, then written in the
// background in one action that can be stopped.

#include "app/desk/beside.h"
#include "app/slips/form_slip.h"
#include "app/slips/readings_import.h"
#include "core/film/climate_log.h"

#include <memory>
#include <optional>

namespace holdfast::app {

class Banner;
class Button;
class Choice;
class Label;
class PlacePick;
class ProgressBeads;
class QuietWait;

class ImportReadingsSlip : public FormSlip {
    Q_OBJECT

public:
    ImportReadingsSlip(ShopDesk& desk, std::optional<PlaceId> place, QWidget* parent);
    ~ImportReadingsSlip() override;

    bool isBusy() const;

protected:
    void act() override;

private:
    void choosePath();
    void readFile();
    void showFound(const Result<ClimateLog>& log);
    void forgetFound();
    void showDateOrder(const ClimateLog& log);
    QStringList detailsOf(const ClimateLog& log) const;
    void import();
    void endImport(ReadingsWritten outcome);
    void showWork(const QString& words, double share);
    void endWork();

    std::unique_ptr<PlacePick> m_place;
    std::unique_ptr<QuietWait> m_wait; // while the readings are written
    Choice* m_dates = nullptr;
    Banner* m_found = nullptr;
    Label* m_details = nullptr;
    ProgressBeads* m_progress = nullptr;
    Button* m_stop = nullptr;
    std::optional<ClimateLog> m_log;
    std::optional<DateOrder> m_dateOrder; // that the person chose
    std::optional<DateOrder> m_readIn;    // that the file is being read in
    bool m_isAsking = false;              // for it
    Beside<Result<ClimateLog>> m_reading;
    Beside<ReadingsWritten> m_import;
};

} // namespace holdfast::app
