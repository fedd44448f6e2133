// Lighting a pit: which, how, with what wood, what stands in the way, and one large button.
#pragma once

#include "models/domain/weather/series.h"
#include "views/fire/light_checks.h"
#include "views/page.h"

class QButtonGroup;
class QCheckBox;
class QLineEdit;
class QPushButton;
class QTimeEdit;
class QVBoxLayout;

namespace rickyard::views {

class Card;
class CautionNote;
class FieldRow;
class FlowLayout;
class LotPicker;
class NoticeBar;
class TapButton;
class TextLabel;
class UnitLineEdit;

class LightPanel : public QWidget
{
    Q_OBJECT

public:
    explicit LightPanel(PageContext &context, QWidget *parent = nullptr);
    void refresh();
    void choosePit(domain::RecordId pit);
    void focusFirst();
    [[nodiscard]] QString preheatText() const;
    [[nodiscard]] QString pullText() const;

Q_SIGNALS:
    void lit(qint64 cook, qint64 lot);

protected:
    void showEvent(QShowEvent *event) override;

private:
    void build();
    QWidget *buildChoices();
    QWidget *buildChecks();
    void fillPits();
    void follow(); // the chosen pit changed
    void showBlocking();
    void showPreheat();
    void showCautions(std::optional<domain::Temperature> outside);
    void showPull(domain::Temperature target, std::optional<domain::Temperature> outside);
    void light();
    // False: the message stands at the field.
    bool typedTarget(std::optional<domain::Temperature> &target);
    void showProblems(const domain::Problems &problems);
    // What stands in the way, and why it is lit all the same.
    [[nodiscard]] commands::Verbs::Despite despite() const;
    [[nodiscard]] domain::Cook cookToLight() const;

    PageContext &m_context;
    domain::RecordId m_pit = 0;
    std::optional<domain::PlannedCook> m_planned;
    QVector<Blocking> m_blocking;
    QVector<domain::RecordId> m_shownPits;
    QWidget *m_pitHolder = nullptr;
    FlowLayout *m_pitFlow = nullptr;
    QButtonGroup *m_pits = nullptr;
    QButtonGroup *m_start = nullptr;
    UnitLineEdit *m_target = nullptr;
    FieldRow *m_targetRow = nullptr;
    LotPicker *m_lot = nullptr;
    QTimeEdit *m_by = nullptr;
    TextLabel *m_preheat = nullptr;
    TextLabel *m_pull = nullptr;
    QPushButton *m_load = nullptr; // of the planned cook
    CautionNote *m_caution = nullptr;
    // Building it takes a moment: kept until the weather changes.
    std::optional<domain::WeatherSeries> m_weather;
    QCheckBox *m_asPlanned = nullptr;
    QCheckBox *m_drain = nullptr;
    QWidget *m_stop = nullptr;
    TextLabel *m_stopText = nullptr;
    QLineEdit *m_reason = nullptr;
    FieldRow *m_reasonRow = nullptr;
    NoticeBar *m_notice = nullptr;
    TapButton *m_light = nullptr;
};

} // namespace rickyard::views
