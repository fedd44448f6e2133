// Weather: what the yard has, its course, every record, and the import of files.
#pragma once

#include "views/page.h"

#include <QPointer>
#include <QTimer>

class QScrollArea;
class QStackedWidget;

namespace rickyard::views {

class Numeral;
class RecordList;
class SectionTabs;
class TextLabel;
class WeatherChart;
class WeatherImportDialog;

class WeatherPage : public Page
{
    Q_OBJECT

public:
    explicit WeatherPage(PageContext &context, QWidget *parent = nullptr);

    bool show(domain::Link link) override;
    void addNew() override; // import a file
    void startSearch() override;

    // Opens the import dialog, with a file when one is named.
    WeatherImportDialog *importFile(const QString &path = {});
    [[nodiscard]] WeatherChart &chart() { return *m_chart; }
    [[nodiscard]] RecordList &records() { return *m_records; }
    [[nodiscard]] QString coveredText() const;

private:
    QWidget *buildBody();
    QWidget *buildHead();
    void buildSections();
    void addByHand();
    void refresh();

    QStackedWidget *m_stack = nullptr;
    Numeral *m_span = nullptr;
    Numeral *m_covered = nullptr;
    Numeral *m_age = nullptr;
    TextLabel *m_sentence = nullptr;
    WeatherChart *m_chart = nullptr;
    SectionTabs *m_sections = nullptr;
    RecordList *m_records = nullptr;
    RecordList *m_profiles = nullptr;
    QPointer<WeatherImportDialog> m_dialog;
    QString m_coveredText;
    bool m_byHand = false; // an empty yard shows its lists once a record is being noted
    QTimer m_soon;         // one refresh for a burst of changes
};

} // namespace rickyard::views
