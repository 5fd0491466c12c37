"""Species, sheets, fasteners, glues: CSV rows, each with its source; a user file can add or override rows.

`load_tables()` gives the `Tables` of the package, `load_tables([(name, text), ...])` those with a user's own
rows, and findings for the rows that are not understood.

Keys of `Tables.figure(key)`; each row of the files says what it is the figure of, and where it comes from.

Allowances (`data/allowances.csv`): planing_allowance, board_width_allowance, rough_width_allowance,
    rough_length_allowance, end_trim, planer_snipe, panel_width_oversize, panel_length_oversize,
    edge_joint_allowance, panel_flattening, ganged_length_allowance,
    glue_up_boards, sheet_edge_trim, resaw_kerf, resaw_face_allowance, kerf_table_saw,
    kerf_table_saw_thin, kerf_track_saw, kerf_jigsaw, kerf_bandsaw, kerf_backsaw, over_net_fas,
    disc_area, edging_over, over_net_1_common, over_net_2_common, over_net_sheet, fas_minimum_width, fas_minimum_length,
    selects_minimum_width, selects_minimum_length, common_minimum_width, common_minimum_length,
    hardwood_shortest_length, hardwood_longest_length, kiln_dried_under_nominal.

Clearances (`data/clearances.csv`): drawer_side_total, tray_side_total, drawer_height_base, drawer_height_share,
    drawer_height_humid, drawer_height_plywood, drawer_depth_behind, drawer_front_gap_inset,
    drawer_front_gap_sheet, overlay_front_gap, lip_overlap, lip_clearance, stop_setback,
    drawer_back_set_down, drawer_bottom_short, drawer_bottom_back_allowance, kicker_clearance,
    slide_side_space, slide_rear_clearance, bar_height_clearance, bar_depth_clearance, bar_width_total,
    bar_running_clearance, door_gap_inset, door_gap_inset_humid, door_gap_inset_dry, door_gap_pair,
    door_leading_bevel, door_gap_premium, door_gap_custom, door_gap_economy, overlay_full, overlay_half,
    continuous_hinge_short, tenon_fit, mortise_deeper, dado_fit, finger_fit, panel_gap, dowel_hole_extra,
    usual_door_width, usual_door_height.

Proportions (`data/proportions.csv`): tenon_thickness_share, tenon_length_frame, tenon_length_apron,
    tenon_length_ratio, tenon_width_ratio, tenon_bottom_shoulder, tenon_shoulder, corner_tenon_share,
    haunch_share, blind_mortise_share, horn_length, wedge_slope, drawbore_offset, drawbore_peg,
    dado_depth_share, dado_depth_back_to_back, dado_depth_screwed, dado_web, dado_setback,
    rabbet_depth_share, rabbet_width_share, back_rabbet_width, back_rabbet_depth_share,
    tongue_thickness_share, tongue_length, half_lap_share, bridle_share, spline_thickness, spline_depth,
    loose_tenon_share, loose_tenon_depth, dovetail_slope_softwood, dovetail_slope_hardwood, dovetail_lap,
    dovetail_half_pin, dovetail_tail_width, dovetail_pin_hand, dovetail_pin_machine, sliding_dovetail_share,
    finger_width_share, panel_groove_depth, panel_groove_width, panel_deep_groove_width,
    panel_movement_share, breadboard_tongue_share, breadboard_tongue_length, breadboard_tenon_length,
    breadboard_tenon_width, breadboard_tenon_pitch, breadboard_end_width, breadboard_glue_length,
    dust_panel_thickness, dust_panel_groove, web_frame_thickness, web_frame_width, face_frame_thickness,
    door_stile_width, door_bottom_rail_extra, door_frame_thickness, drawer_front_thickness,
    drawer_side_thickness, drawer_back_thickness, drawer_bottom_thickness, drawer_bottom_groove_up,
    drawer_bottom_groove_depth, runner_width, runner_thickness, bar_groove_height, bar_groove_depth,
    bar_length_share, bar_overlap_share, dowel_diameter_share, dowel_face_share, dowel_end_share,
    dowel_edge_share, dowel_spacing_ratio, dowel_spacing_case, dowel_first_edge, dowel_spacing_edge_joint,
    dowels_rail_end, biscuit_spacing, biscuit_first, biscuit_0_length, biscuit_0_width, biscuit_0_slot_depth,
    biscuit_10_length, biscuit_10_width, biscuit_10_slot_depth, biscuit_20_length, biscuit_20_width,
    biscuit_20_slot_depth, biscuit_thickness, biscuit_cutter, biscuit_20_least,
    pocket_angle, pocket_bore, pocket_spacing, pocket_edge,
    pocket_screw_1_2, pocket_screw_3_4, pocket_screw_1, pocket_screw_1_1_2,
    screw_length_ratio, screw_receiver, screw_receiver_least, screw_thread_share, screw_tip_cover,
    table_height, table_overhang, leg_thickness, leg_foot_share, leg_taper_below, apron_height,
    apron_drawer_height, apron_setback, stretcher_height, stretcher_up, button_width, button_length,
    button_tongue, button_pitch, button_gap, cleat_size, clip_diameter, clip_thickness, clip_pitch, clip_play,
    z_clip_width, z_clip_length, z_clip_leg, z_clip_drop, z_clip_thickness,
    system_hole_pitch, system_hole_diameter, system_hole_setback, shelf_pin_depth,
    butt_hinge_length_12, butt_hinge_length_24, butt_hinge_length_36, butt_hinge_length_48, butt_hinge_leaf,
    butt_hinge_pin, butt_hinge_knuckle, butt_hinge_two_under, hinge_one_more, continuous_hinge_leaf,
    continuous_hinge_knuckle, continuous_hinge_pitch, cup_hinge_diameter, cup_hinge_depth, cup_hinge_edge,
    cup_hinge_end, cup_hinge_dowel, cup_hinge_dowel_spacing, cup_hinge_dowel_offset, cup_hinge_dowel_depth,
    cup_hinge_height_2, cup_hinge_height_3, cup_hinge_height_4, cup_hinge_height_5, cup_hinge_weight_2,
    cup_hinge_weight_3, cup_hinge_weight_4, cup_hinge_weight_5, door_bumper, door_behind, door_strip_width,
    door_strip_thickness, door_batten_width, knob_hole, knob_diameter, pull_spread, raised_field_width,
    raised_field_step, glass_rabbet, glass_play, glass_bead, lid_overhang, lid_turn, lid_rail,
    face_frame_width, face_frame_least, shelf_pin_diameter_in, shelf_pin_pitch_in, shelf_pin_end,
    shelf_pin_clearance, wall_cleat_width, wall_cleat_angle, wall_cleat_play, pull_two_from, plinth_height,
    plinth_setback, bracket_foot_height, bracket_foot_width, base_leg_height, cover_overhang.

Loads (`data/loads.csv`): shelf_load_books, shelf_load_other, shelf_load_largest, shelf_deflection_ratio,
    sag_visible_ratio, sag_design_ratio, books_per_length, drawer_load_clothing, drawer_load_kitchen,
    creep_solid_wood, creep_plywood, creep_particleboard, creep_mdf, creep_hardboard,
    clamp_pressure_softwood, clamp_pressure_hardwood, clamp_force_bar, clamp_force_pipe,
    clamp_force_parallel, joint_stress_after, books_row_depth, china_per_length, drawer_load_tools,
    plywood_across_3_plies, plywood_across_5_plies, plywood_across_7_plies, wood_across_share,
    wood_across_strength_share, bending_strength_plywood, bending_strength_particleboard,
    bending_strength_mdf, lift_two_persons_share, clothing_rule_height, clothing_rule_mass,
    clothing_rule_weight, clothing_rule_block, clothing_rule_pull, clothing_rule_hand, anchor_height, leg_push,
    stud_spacing, door_test_weight, door_test_arm, racking_push, case_corner_moment,
    drawer_test_pull.

The shop (`data/shop.csv`): precision_thickness, precision_rip, precision_crosscut, precision_groove_width,
    precision_groove_depth, precision_groove_place, precision_square, mitre_open, joint_gap_largest,
    share_that_fails, rattle_ratio, slide_room_more, jointer_width, planer_width,
    planer_thinnest, saw_rip, saw_depth, saw_shortest_rip, saw_shortest_crosscut, saw_narrowest,
    mitre_saw_shortest, router_shortest, router_narrowest, clamp_longest, clamp_count, clamp_pad,
    glue_spread_time, glue_close_time, glue_clamp_time.
"""

from __future__ import annotations

from boardwright.tables.bundle import NOMINAL_MATCH, Tables
from boardwright.tables.load import default_tables, load_tables
from boardwright.tables.records import (
    BoardSize,
    Climate,
    Dowel,
    Figure,
    Finish,
    Glue,
    Grade,
    LumberClass,
    MoistureRange,
    Screw,
    Sheet,
    Slide,
    Species,
)

__all__ = [
    "NOMINAL_MATCH",
    "BoardSize",
    "Climate",
    "Dowel",
    "Figure",
    "Finish",
    "Glue",
    "Grade",
    "LumberClass",
    "MoistureRange",
    "Screw",
    "Sheet",
    "Slide",
    "Species",
    "Tables",
    "default_tables",
    "load_tables",
]
