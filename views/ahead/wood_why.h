// Why wood is to be ordered, or not: the fan of dry stock with its events, what happens if, the
// suppliers compared, and a what-if that redraws the fan while its sliders move.
#pragma once

#include "models/domain/plan/reorder.h"
#include "views/latest_work.h"
#include "views/page.h"

class QPushButton;
class QVBoxLayout;

namespace rickyard::views {

class FanChart;
class FigureTable;
class OrderWhatIf;
class TextLabel;

class WoodWhy : public QWidget
{
    Q_OBJECT

public:
    explicit WoodWhy(PageContext &context, QWidget *parent = nullptr);

    // From the answers; waits until it is seen.
    void refresh();

    [[nodiscard]] FanChart &fan() const { return *m_fan; }
    [[nodiscard]] OrderWhatIf &whatIf() const { return *m_whatIf; }
    [[nodiscard]] FigureTable &suppliers() const { return *m_suppliers; }
    [[nodiscard]] FigureTable &events() const { return *m_events; }
    [[nodiscard]] FigureTable &course() const { return *m_course; }
    [[nodiscard]] QString lines() const; // what happens if

Q_SIGNALS:
    void opened(const rickyard::domain::Link &link);

protected:
    void showEvent(QShowEvent *event) override;

private:
    void build();
    QWidget *buildTools();
    void addPart(const QString &heading, QWidget *part);
    void fill();
    void askColder();
    void showLines(const std::optional<domain::WoodWhatIfAnswer> &colder);
    void showThoughtUp();
    void write(int source, int units);
    void exportPicture();
    void exportNumbers();

    PageContext &m_context;
    bool m_stale = true;
    QVBoxLayout *m_column = nullptr;
    TextLabel *m_lines = nullptr;
    FanChart *m_fan = nullptr;
    QPushButton *m_showCourse = nullptr;
    FigureTable *m_course = nullptr;
    OrderWhatIf *m_whatIf = nullptr;
    QWidget *m_supplierPart = nullptr;
    FigureTable *m_suppliers = nullptr;
    FigureTable *m_events = nullptr;
    TextLabel *m_check = nullptr;
    LatestWork m_colder;
};

} // namespace rickyard::views
